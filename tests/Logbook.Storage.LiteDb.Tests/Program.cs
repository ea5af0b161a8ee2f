using Logbook.Storage.LiteDb.Tests;

// The tests start their own assembly as a program of its own, to kill it.
return args is [Appender.Word, var site] ? Appender.Save(site) : 2;
