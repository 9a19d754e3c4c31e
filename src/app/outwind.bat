@echo off
rem Starts Outwind with the Java that lies in the folder beside this one, wherever both were put.
rem One board is done before it pays to compile well. A stack or an afternoon at the bench is not.
set long=
if "%~1"=="stack" set long=-XX:TieredStopAtLevel=4
if "%~1"=="bench" set long=-XX:TieredStopAtLevel=4
"%~dp0..\runtime\bin\java" %long% -m outwind/outwind.cli.Main %*
