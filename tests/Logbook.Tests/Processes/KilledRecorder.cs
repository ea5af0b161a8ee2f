using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

/// <summary>
/// <c>logbook record</c>, started again and again and killed with SIGKILL at a moment that chance picks: anywhere in its run,
/// while it saves, or right after it answered. Whatever it answered in a whole line was acknowledged.
/// </summary>
internal sealed class KilledRecorder(string site, Random chance)
{
    private const double LongestSave = 0.5; // of a whole run: a program's first save is the slow one

    private readonly string _owner = Path.Combine(site, "journal", "owner"); // written when a burst of saves begins
    private readonly List<(long Seq, string Head)> _acknowledged = [];
    private string? _trouble;
    private TimeSpan? _wholeRun; // measured once, since it depends on the machine

    public int Acknowledged => _acknowledged.Count;

    /// <summary>How many runs were killed before they ended by themselves.</summary>
    public int Killed { get; private set; }

    public void Once()
    {
        var begun = Stopwatch.GetTimestamp();
        var before = File.GetLastWriteTimeUtc(_owner);
        var value = (250 + chance.Next(100)).ToString(CultureInfo.InvariantCulture);
        using var program = RealProgram.Start(site, "record", $"SL-F1={value}", "--by", "op1", "--json", "--wait", "60");
        var (anywhere, share) = (chance.Next(3) == 0, chance.NextDouble());
        if (_wholeRun is not { } whole)
        {
            Take(program.WaitForEnd());
            _wholeRun = Stopwatch.GetElapsedTime(begun);
            return;
        }

        if (anywhere)
        {
            Pass(program, whole * share);
        }
        else
        {
            while (!program.HasEnded && File.GetLastWriteTimeUtc(_owner) == before)
            {
                Thread.Sleep(1);
            }

            Pass(program, whole * LongestSave * share * share);
        }

        if (!program.HasEnded)
        {
            program.Kill();
            Killed++;
        }

        Take(program.WaitForEnd());
    }

    /// <summary>Why an acknowledged record is not there or the journal is not sound; null when all is well.</summary>
    public string? WhyNot()
    {
        if (_trouble is not null)
        {
            return _trouble;
        }

        using var journal = new LiteDbJournal(site, "afterwards", TimeProvider.System);
        if (journal.Verify() is { Ok: false } bad)
        {
            return $"not sound: {bad.Why}";
        }

        var there = journal.Read().ToDictionary(r => r.Seq, r => r.Hash);
        var lost = _acknowledged.Where(a => there.GetValueOrDefault(a.Seq) != a.Head).Select(a => a.Seq).ToList();
        return lost.Count == 0 ? null : $"lost: {string.Join(", ", lost)}";
    }

    private static void Pass(RealProgram program, TimeSpan time)
    {
        var start = Stopwatch.GetTimestamp();
        while (!program.HasEnded && Stopwatch.GetElapsedTime(start) < time)
        {
            Thread.Sleep(1);
        }
    }

    private void Take((int Code, string Out, string Error) answer)
    {
        if (answer.Out.EndsWith('\n')) // a line without its end was not said
        {
            var saved = JsonDocument.Parse(answer.Out).RootElement;
            _acknowledged.Add((saved.GetProperty("seq").GetInt64(), saved.GetProperty("head").GetString()!));
        }
        else if (answer.Code is not (0 or 128 + 9))
        {
            _trouble ??= $"refused with exit code {answer.Code}: {answer.Error.Trim()}";
        }
    }
}
