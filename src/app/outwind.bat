@echo off
rem Starts Outwind with the Java that lies in the folder beside this one, wherever both were put.
"%~dp0..\runtime\bin\java" -m outwind/outwind.cli.Main %*
