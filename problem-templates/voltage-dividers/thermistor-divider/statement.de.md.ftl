Ein Heißleiter (NTC) misst die Temperatur der Luft in einem Gehäuse. Er hat **${R25}** bei 25 °C, das sind ${T25} (0 °C sind 273,15 K), und verliert Widerstand, wenn er wärmer wird. Sein Beta-Wert *B* ist **${B}**. Der Widerstand *R*, den er bei einer Temperatur *T* in Kelvin hat, folgt der Beta-Gleichung, in der ln der natürliche Logarithmus ist (wenn e hoch *x* mit e ≈ 2,718 gleich *y* ist, dann ist *x* = ln *y*):

1/*T* = 1/(${T25}) + ln(*R*/(${R25}))/*B*

Mit **${R1}** über ihm bildet der Heißleiter einen Spannungsteiler an **${Vs}**. Am Heißleiter misst du **${V}**.
