A status light runs from **${Vs}**. Its LED drops **${Vf}** at **${If}**.
