using System.Diagnostics;
using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>
/// This assembly run as a program: saves until it is killed or cannot save any more, and says each head only after the save
/// returned. One line for a save: sequence number and hash. The last line of one that gave up begins with the trouble.
/// </summary>
internal static class Appender
{
    public static int Main(string[] args)
    {
        using var journal = new LiteDbJournal(args[0], "appender", TimeProvider.System, TimeSpan.FromMinutes(1));
        try
        {
            while (true)
            {
                var record = journal.Append(Drafts.Of(new Remark(new string('x', 4000), null, null)));
                Console.Out.WriteLine($"{record.Seq} {record.Hash}");
            }
        }
        catch (JournalException trouble)
        {
            Console.Out.WriteLine($"{trouble.Trouble} {trouble.Message}");
            return 4;
        }
    }

    /// <summary>Starts it on a site, under a shell's limits if need be.</summary>
    public static Process Start(string site, string limits = "")
    {
        // A limited file size would otherwise hit the memory file that the runtime keeps its machine code in.
        var start = new ProcessStartInfo("/bin/sh") { UseShellExecute = false, RedirectStandardOutput = true, Environment = { ["DOTNET_EnableWriteXorExecute"] = "0" } };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add($"{limits} exec dotnet '{typeof(Appender).Assembly.Location}' '{site}'");
        return Process.Start(start)!;
    }
}
