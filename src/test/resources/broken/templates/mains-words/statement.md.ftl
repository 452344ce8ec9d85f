Plugged into the mains, a status light runs from **${Vs}**. Its LED drops **${Vf}** at **${If}**.
