@echo off
rem Starts Outwind with the Java that lies in the folder beside this one, wherever both were put.
rem One board is done before it pays to compile well, or to collect garbage. A stack or an afternoon at the bench is not.
set java=-Xmn200m
if "%~1"=="stack" set java=-XX:TieredStopAtLevel=4
if "%~1"=="bench" set java=-XX:TieredStopAtLevel=4
"%~dp0..\runtime\bin\java" %java% -m outwind/outwind.cli.Main %*
