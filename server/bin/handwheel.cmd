@echo off
rem Starts Handwheel with the Java in JAVA_HOME or, failing that, the first one in PATH.
rem
rem Works from any folder; builds and writes nothing. Environment:
rem   JAVA_HOME            a Java 17 or newer
rem   HANDWHEEL_JAVA_OPTS  more options for Java, parted by blanks, for example -Xmx2g
rem
rem Paths may hold blanks and parentheses: each is quoted, and none stands inside a block.
setlocal EnableExtensions DisableDelayedExpansion
set "ERRORLEVEL="
set "HW_JAVA="
set "HW_VERSION="
set "HW_MAJOR=0"
set "HW_ARCHIVE="

set "HW_LIB=%~dp0..\lib"
if exist "%HW_LIB%\handwheel.jar" goto find_java
set "HW_LIB=%~dp0..\target"
if exist "%HW_LIB%\handwheel.jar" goto find_java
>&2 echo handwheel: no handwheel.jar in "%~dp0..\lib" or "%~dp0..\target"; build it with: mvn package
exit /b 2

:find_java
if not defined JAVA_HOME goto java_in_path
set "HW_JAVA=%JAVA_HOME:"=%\bin\java.exe"
if exist "%HW_JAVA%" goto find_version
:java_in_path
set "HW_JAVA="
for %%J in (java.exe) do set "HW_JAVA=%%~$PATH:J"
if defined HW_JAVA goto find_version
>&2 echo handwheel: no Java found; install Java 17 or newer, or set JAVA_HOME to it
exit /b 2

:find_version
rem A Java folder states its version in a file, which is much quicker to read than Java to ask.
for %%J in ("%HW_JAVA%") do set "HW_RELEASE=%%~dpJ..\release"
if not exist "%HW_RELEASE%" goto ask_java
for /f "usebackq tokens=1,2 delims==" %%A in ("%HW_RELEASE%") do if "%%A"=="JAVA_VERSION" set "HW_VERSION=%%~B"
if defined HW_VERSION goto check_version
:ask_java
for /f "tokens=2,3" %%A in ('^""%HW_JAVA%" -version 2^>^&1^"') do if "%%~A"=="version" set "HW_VERSION=%%~B"
if defined HW_VERSION goto check_version
>&2 echo handwheel: this Java does not start: "%HW_JAVA%"
exit /b 2

:check_version
for /f "delims=.-+_ " %%M in ("%HW_VERSION%") do set /a "HW_MAJOR=%%M"
if %HW_MAJOR% GEQ 17 goto start
>&2 echo handwheel: needs Java 17 or newer, but "%HW_JAVA%" is Java %HW_VERSION%
exit /b 2

:start
rem An archive made by another Java or for another jar is passed over. Java reports that on standard
rem output, which belongs to the editor, so its log is cut down to errors, on standard error.
if exist "%HW_LIB%\handwheel.jsa" set HW_ARCHIVE=-Xlog:disable -Xlog:all=error:stderr "-XX:SharedArchiveFile=%HW_LIB%\handwheel.jsa"
"%HW_JAVA%" -Xshare:auto -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Xms40m -XX:NewSize=22m -XX:CompileThresholdScaling=1.5 -XX:-UsePerfData -XX:MinHeapFreeRatio=10 -XX:MaxHeapFreeRatio=30 -Dfile.encoding=UTF-8 %HW_ARCHIVE% %HANDWHEEL_JAVA_OPTS% -jar "%HW_LIB%\handwheel.jar" %*
exit /b %ERRORLEVEL%
