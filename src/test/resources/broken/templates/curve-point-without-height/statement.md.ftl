A capacitor of **${C}** fills from **${U}** through **${R}**.
