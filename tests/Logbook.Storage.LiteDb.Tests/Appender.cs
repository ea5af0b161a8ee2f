using System.Diagnostics;
using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>
/// A program that saves until it is killed or cannot save any more, and says each head only after the save returned. One line
/// for a save: sequence number and hash. The last line of one that gave up begins with the trouble.
/// </summary>
internal static class Appender
{
    /// <summary>The word that this assembly, run as a program, is told to do it with.</summary>
    public const string Word = "append";

    public static int Save(string site)
    {
        using var journal = new LiteDbJournal(site, "appender", TimeProvider.System, TimeSpan.FromMinutes(1));
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
        start.ArgumentList.Add($"{limits} exec dotnet '{typeof(Appender).Assembly.Location}' {Word} '{site}'");
        return Process.Start(start)!;
    }

    /// <summary>Starts it, kills it after so many saves and returns every save that it acknowledged.</summary>
    public static IReadOnlyList<string> Killed(string site, int saves)
    {
        using var child = Start(site);
        var acknowledged = new List<string>();
        for (var i = 0; i < saves; i++)
            acknowledged.Add(child.StandardOutput.ReadLine()!);
        child.Kill();
        var rest = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        return [.. acknowledged, .. rest.Split('\n')[..^1]]; // a last line without its end was not said
    }
}
