In the lantern workshop you put two resistors side by side, **${R1}** (R1) and **${R2}** (R2), and connect both to the same supply of **${V}**. The current of the supply divides between them.
