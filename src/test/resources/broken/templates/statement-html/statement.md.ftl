A <b>status</b> light runs from **${Vs}**. Its LED drops **${Vf}** at **${If}**.
