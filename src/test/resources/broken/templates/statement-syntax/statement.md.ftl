A tile has **${columns}** columns and **${rows}** rows of pixels, in ${order} order. <#if order == "serpentine">It snakes. The marked pixel sits in column **${x}** of row **${y}**.
