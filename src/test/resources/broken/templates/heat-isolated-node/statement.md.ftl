A regulator turns **${P}** into heat. From its junction to the air it has **${theta_JA}**; the air has **${Ta}**.
