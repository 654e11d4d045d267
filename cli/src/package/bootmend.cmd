@echo off
rem Starts bootmend with the Java that lies beside it, from wherever this folder is.
"%~dp0..\lib\runtime\bin\java.exe" @OPTIONS@ "-XX:AOTCache=%~dp0..\lib\bootmend.aot" -m bootmend/bootmend.cli.Main %*
