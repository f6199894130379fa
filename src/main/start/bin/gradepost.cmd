@echo off
rem Starts gradepost in half the time of "java -jar": with the classes that the first brief and the first
rem desk have stored, and a compiler that is soon done. The thorough one pays only in what runs for long.
rem bin/gradepost does the same where there is a sh: change both.
setlocal
for %%d in ("%~dp0..") do set "home=%%~fd"
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
if exist "%home%\runtime\bin\java.exe" set "java=%home%\runtime\bin\java"
set "stored=%home%\gradepost.jsa"
rem A desk is open all day, and a worker makes packs by the hundred: both have the thorough compiler. A desk
rem begins with little memory, and takes more where it needs it.
set "own="
if "%~1"=="desk" set "own=-XX:TieredStopAtLevel=4 -Xms48m -Xmn32m -XX:SurvivorRatio=2 -XX:TargetSurvivorRatio=90"
if "%~1"=="desk" set "stored=%home%\gradepost-desk.jsa"
if "%~1"=="work" set "own=-XX:TieredStopAtLevel=4"
rem Ctrl+C at the first desk may have ended this script too, before it put the classes in place.
if "%~1"=="desk" if not exist "%stored%" for %%f in ("%stored%.*") do move /y "%%f" "%stored%" >nul 2>&1
if exist "%stored%" goto start
if "%~1"=="brief" goto first
if not "%~1"=="desk" goto start
:first
"%java%" -Xshare:on -version >nul 2>&1 || goto start
rem Under a name of its own until it is whole: several may start at once.
set "new=%stored%.%RANDOM%%RANDOM%"
(type nul >"%new%") 2>nul || goto start
del "%new%"
"%java%" -XX:ArchiveClassesAtExit="%new%" ^
  -XX:TieredStopAtLevel=1 %own% -XX:+UseSerialGC -Xshare:auto -Xlog:disable -Xlog:all=error:stderr ^
  -jar "%home%\gradepost.jar" %*
set "code=%ERRORLEVEL%"
rem A brief ends by itself, a desk by Ctrl+C. One that ended otherwise has used few classes.
set "whole=brief"
if %code% gtr 2 set "whole=desk"
if %code% lss 0 set "whole=desk"
if not "%~1"=="%whole%" if exist "%new%" del "%new%"
if exist "%new%" move /y "%new%" "%stored%" >nul
exit /b %code%
:start
"%java%" -XX:SharedArchiveFile="%stored%" ^
  -XX:TieredStopAtLevel=1 %own% -XX:+UseSerialGC -Xshare:auto -Xlog:disable -Xlog:all=error:stderr ^
  -jar "%home%\gradepost.jar" %*
exit /b %ERRORLEVEL%
