In the lantern workshop you connect a resistor R1 of **${R}** to a bench supply, with a meter for current between the two, as in the figure. The meter shows the current that flows round the loop.
