using Logbook.Journal;
using Logbook.Storage.LiteDb;
using Logbook.Storage.LiteDb.Tests;
using Logbook.Tests;

namespace Soak;

/// <summary>Programs that save, and SIGKILL.</summary>
internal static class Kills
{
    private const int MostSaves = 120; // the first checkpoints lie within
    private const int KillsOfOneSite = 50; // a longer journal takes longer to verify

    /// <summary>A loop that does nothing but save: most kills hit a save or a checkpoint.</summary>
    public static void OfASavingLoop(Report report, int seed, int kills)
    {
        var chance = new Random(seed);
        using var sites = new Sites();
        var acknowledged = new List<string>();
        report.Run("kill -9 of a loop of saves", kills, (run, line) =>
        {
            if (run % KillsOfOneSite == 0)
            {
                sites.Next();
                acknowledged.Clear();
            }

            var said = Appender.Killed(sites.Folder, chance.Next(1, MostSaves));
            acknowledged.AddRange(said);
            line.Acknowledged += said.Count;
            return WhyNot(sites.Folder, acknowledged);
        });
    }

    /// <summary><c>logbook record</c> as it is started by a person.</summary>
    public static void OfTheProgram(Report report, int seed, int kills)
    {
        using var sites = new Sites();
        KilledRecorder? recorder = null;
        report.Run("kill -9 of logbook record", kills, (run, line) =>
        {
            if (run % KillsOfOneSite == 0)
            {
                sites.Next();
                RealProgram.Run(sites.Folder, "init", sites.Folder);
                recorder = new KilledRecorder(sites.Folder, new Random(seed + run));
            }

            var before = recorder!.Acknowledged;
            recorder.Once();
            line.Acknowledged += recorder.Acknowledged - before;
            return recorder.WhyNot();
        });
    }

    private static string? WhyNot(string site, List<string> acknowledged)
    {
        using var journal = new LiteDbJournal(site, "afterwards", TimeProvider.System);
        if (journal.Verify() is { Ok: false } bad)
        {
            return $"not sound: {bad.Why}";
        }

        var there = journal.Read().Select(record => $"{record.Seq} {record.Hash}").ToHashSet(StringComparer.Ordinal);
        return acknowledged.Find(a => !there.Contains(a)) is { } lost ? $"lost: {lost}" : null;
    }

    /// <summary>Site folders, one at a time, gone afterwards.</summary>
    private sealed class Sites : IDisposable
    {
        public string Folder { get; private set; } = "";

        public void Next()
        {
            Dispose();
            Folder = Directory.CreateTempSubdirectory("logbook-soak-").FullName;
        }

        public void Dispose()
        {
            if (Folder.Length > 0)
            {
                Directory.Delete(Folder, recursive: true);
            }
        }
    }
}
