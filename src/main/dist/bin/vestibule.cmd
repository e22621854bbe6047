@echo off
rem Starts Vestibule. JAVA_HOME, if set, says which Java; VESTIBULE_JAVA_OPTIONS adds options for it.
setlocal
set "DIST=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -XX:+UseSerialGC -Xshare:auto %VESTIBULE_JAVA_OPTIONS% -Dvestibule.distribution="%DIST%" -cp "%DIST%\lib\*" org.vestibule.cli.Main %*
exit /b %ERRORLEVEL%
