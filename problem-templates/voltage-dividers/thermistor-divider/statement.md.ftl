A thermistor measures the temperature of the air in a housing. It has **${R25}** at 25 °C, which is ${T25} (0 °C is 273.15 K), and loses resistance as it warms. Its beta *B* is **${B}**. The resistance *R* that it has at a temperature *T* in kelvin follows the beta equation, in which ln is the natural logarithm (if e = 2.718 to the power *x* is *y*, then *x* = ln *y*):

1/*T* = 1/(${T25}) + ln(*R*/(${R25}))/*B*

With **${R1}** above it, the thermistor forms a divider on **${Vs}**. Across the thermistor you measure **${V}**.
