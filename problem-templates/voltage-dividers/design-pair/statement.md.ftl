A sensor input needs **${Vout}**, give or take ${tol}, and the bench has **${Vin}**. The drawer holds every E24 value from 1 kΩ to 1 MΩ. The divider is allowed to draw **${Imax}** at most.
