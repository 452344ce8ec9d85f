A status light runs from **${Vss}**. Its LED drops **${Vf}** at **${If}**.
