A tile has **${columns}** columns and **${rows}** rows of pixels, in ${order} order. The marked pixel sits in column **${x}** of row **${y}**.
