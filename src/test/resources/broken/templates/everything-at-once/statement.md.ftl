A status light runs from **${R}**. Its LED drops **${Vf}** at **${If}**.
