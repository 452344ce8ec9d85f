A divider makes a smaller voltage out of **${Vs}**. Nothing is connected to its output.
