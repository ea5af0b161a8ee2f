using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What corrections did to entries: both stay in the journal, the last one counts.</summary>
internal static class Corrected
{
    /// <summary>Entry and point to the last correction of that reading.</summary>
    public static Dictionary<(long Target, string Point), JournalRecord> LastOf(IEnumerable<JournalRecord> records)
    {
        var last = new Dictionary<(long, string), JournalRecord>();
        foreach (var record in records)
        {
            if (record.Body is Correction correction)
            {
                last[(correction.Target, correction.Reading.Point)] = record;
            }
        }

        return last;
    }

    /// <summary>The entries as they stand after their corrections: readings put right, results and findings of the last run.</summary>
    public static IEnumerable<(JournalRecord Record, Entry Entry)> Entries(IReadOnlyList<JournalRecord> records)
    {
        var last = LastOf(records);
        var runs = last.Values.OrderBy(r => r.Seq).Select(r => (Correction)r.Body).GroupBy(c => c.Target).ToDictionary(g => g.Key, g => g.Last());
        foreach (var record in records)
        {
            if (record.Body is Entry entry)
            {
                yield return (record, runs.TryGetValue(record.Seq, out var run)
                    ? entry with
                    {
                        Readings = [.. entry.Readings.Select(r => last.TryGetValue((record.Seq, r.Point), out var c) ? ((Correction)c.Body).Reading : r)],
                        Results = run.Results,
                        Findings = run.Findings,
                    }
                    : entry);
            }
        }
    }
}
