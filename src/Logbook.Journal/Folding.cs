using System.Collections.Immutable;

namespace Logbook.Journal;

/// <summary>How an entry or a correction moves the newest values and their findings forward.</summary>
internal static class Folding
{
    public static State AfterEntry(this State state, JournalRecord record, Entry entry)
    {
        var taken = EntryValues.Of(record, entry).Where(value => value.Value is not null).ToList();
        var latest = state.Latest.TakeNewer(taken);
        var judged = new Judged([.. taken.Select(v => v.Point)], Newest(taken, latest), [.. OpenFinding.Numbered(record.Seq, record.At, entry.Findings).Where(f => !IsOver(f, latest, record.Seq))]);
        return state with { Latest = latest, Findings = judged.Apply(judged.Counts ? state.Findings.Remove("") : state.Findings) };
    }

    /// <summary>
    /// A correction counts here where it concerns the newest value of a point; older values matter to the series alone. The
    /// entry itself is not at hand, so a value that only now becomes the newest has no round.
    /// </summary>
    public static State AfterCorrection(this State state, JournalRecord record, Correction correction)
    {
        var newest = state.Latest.Values.FirstOrDefault(value => IsDerivedIn(value, correction));
        var origin = new Origin(correction.Target, newest?.At ?? correction.ReadAt, record.By, Round: null);
        var put = correction.Readings.Select(origin.Read)
            .Concat(correction.Results.Where(result => result.Point is not null).Select(origin.Derived))
            .Select(value => Inherit(value, state.Latest) with { CorrectedBy = record.Seq })
            .ToList();
        var latest = state.Latest.TakenBack(correction, record.Seq).TakeNewer(put);
        var judged = new Judged(
            [.. put.Select(v => v.Point)], Newest(put, latest),
            [.. OpenFinding.Numbered(record.Seq, correction.ReadAt, correction.Findings, correction.Target).Where(f => !IsOver(f, latest, correction.Target))]);
        return state with { Latest = latest, Findings = judged.Apply(Judged.Without(state.Findings, correction)) };
    }

    /// <summary>What is found late of an earlier time says nothing of a point that was read again since.</summary>
    private static bool IsOver(OpenFinding found, ImmutableDictionary<string, SeriesValue> latest, long entry) =>
        found.Finding.Point is { } tag && latest.TryGetValue(tag, out var value) && value.Value is not null && value.At > found.At && value.Seq != entry;

    private static ImmutableDictionary<string, SeriesValue> TakeNewer(
        this ImmutableDictionary<string, SeriesValue> latest, IEnumerable<SeriesValue> values)
    {
        var builder = latest.ToBuilder();
        foreach (var value in values)
        {
            if (!builder.TryGetValue(value.Point, out var before) || value.IsNewerThan(before))
                builder[value.Point] = value;
        }

        return builder.ToImmutable();
    }

    private static IReadOnlyList<string> Newest(IEnumerable<SeriesValue> values, ImmutableDictionary<string, SeriesValue> latest) =>
        [.. values.Where(value => latest[value.Point] == value).Select(value => value.Point)];

    /// <summary>Results of the corrected entry that were not computed again stand no longer.</summary>
    private static ImmutableDictionary<string, SeriesValue> TakenBack(
        this ImmutableDictionary<string, SeriesValue> latest, Correction correction, long seq) =>
        latest.SetItems(latest.Where(pair => IsDerivedIn(pair.Value, correction))
            .Select(pair => KeyValuePair.Create(pair.Key, pair.Value with { Value = null, CorrectedBy = seq })));

    // What was read has typed text; what was derived has none.
    private static bool IsDerivedIn(SeriesValue value, Correction correction) =>
        value.Seq == correction.Target && value.Typed is null && value.Value is not null
        && correction.Of(value.Point) is null;

    private static SeriesValue Inherit(SeriesValue value, ImmutableDictionary<string, SeriesValue> latest) =>
        latest.TryGetValue(value.Point, out var old) && old.Seq == value.Seq ? value with { Round = old.Round, By = old.By } : value;
}
