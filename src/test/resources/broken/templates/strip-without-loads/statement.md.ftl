A strip of **${n}** lights runs from **${Vs}**. Each draws **${If}**.
