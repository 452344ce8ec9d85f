@echo off
rem Starts the program with the Java runtime beside it. Without arguments: the desk.
setlocal
set "here=%~dp0"
set "classes=%here%classes.jsa"
rem The first compiler only: for a class of 300 the second costs more than it saves.
set "most=-Xmx2g"
if "%~1"=="" set "most=-Xmx256m"
if "%~1"=="desk" set "most=-Xmx256m"
set "settings=%most% -XX:+UseSerialGC -XX:TieredStopAtLevel=1"
if not exist "%classes%" goto start
set settings=%settings% "-XX:SharedArchiveFile=%classes%" -Xshare:auto -Xlog:cds=off -Xlog:cds+dynamic=off
:start
"%here%runtime\bin\java.exe" %settings% -jar "%here%ampersheet.jar" %*
