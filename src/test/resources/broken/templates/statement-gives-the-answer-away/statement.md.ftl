A status light runs from **${Vs}**. It needs ${R}. Its LED drops **${Vf}** at **${If}**.
