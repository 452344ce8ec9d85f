@echo off
rem Starts the program with the Java runtime beside it. Without arguments: the desk.
setlocal
set "here=%~dp0"
set "classes=%here%classes.jsa"
set "settings=-Xmx2g -XX:+UseSerialGC"
if "%~1"=="" set "settings=-Xmx256m -XX:+UseSerialGC"
if "%~1"=="desk" set "settings=-Xmx256m -XX:+UseSerialGC"
if "%~1"=="work" set "settings=-Xmx2g -XX:+UseSerialGC -XX:TieredStopAtLevel=1"
if "%~1"=="check" set "settings=-Xmx2g -XX:+UseSerialGC -XX:TieredStopAtLevel=1"
if not exist "%classes%" goto start
set settings=%settings% "-XX:SharedArchiveFile=%classes%" -Xshare:auto -Xlog:cds=off -Xlog:cds+dynamic=off
:start
"%here%runtime\bin\java.exe" %settings% -jar "%here%ampersheet.jar" %*
