using System.Collections.Immutable;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What one person typed of one round and what is not in the journal yet, in the order of typing.</summary>
internal sealed record Draft(string Round, string By, ImmutableList<DraftLine> Lines)
{
    public DraftLine? Find(string point) => Lines.Find(l => l.Point == point);

    /// <summary>The draft with this line in place of an earlier one; null when nothing is left to save.</summary>
    public static Draft? Put(Draft? draft, DraftLine line)
    {
        var others = draft?.Lines.RemoveAll(l => l.Point == line.Point) ?? [];
        var lines = line.IsEmpty ? others : others.Add(line);
        return lines.IsEmpty ? null : new Draft(line.Round, line.By, lines);
    }

    /// <summary>Readings, of which there is none when there are only remarks.</summary>
    public int Readings => Lines.Count(l => l.Text is not null);

    /// <summary>The entry whose readings are taken a second time; null for a round.</summary>
    public long? SecondOf => Lines.Select(l => l.SecondOf).FirstOrDefault(s => s is not null);

    public DateTimeOffset From => Lines.Min(l => l.At);

    public DateTimeOffset To => Lines.Max(l => l.At);

    /// <summary>
    /// The lines as one entry. A round at the panel is walked from its first reading to its last, so that all of it belongs
    /// to the slot in which it was begun.
    /// </summary>
    public EntryRequest Request(params IReadOnlyList<DraftLine> lines)
    {
        var words = lines.Where(l => l.Text is null && l.Remark is not null).Select(l => $"{l.Point}: {l.Remark}");
        return new EntryRequest(By, [.. lines.Select(l => l.Reading).OfType<TypedReading>()])
        {
            Round = InEntry(Round),
            WalkStart = lines.Select(l => l.WalkStart).FirstOrDefault(w => w is not null) ?? lines.Min(l => l.At),
            WalkEnd = lines.Select(l => l.WalkEnd).FirstOrDefault(w => w is not null) ?? lines.Max(l => l.At),
            Remark = string.Join("; ", words),
            SecondOf = SecondOf,
        };
    }

    /// <summary>What is read instead of a defeated trip is saved as what it is, a reading by hand: it counts by its point.</summary>
    public static string? InEntry(string round) => InsteadOfTrips.Is(round) ? null : round;

    /// <summary>What is left when the record is in the journal; null when that is nothing.</summary>
    public Draft? Without(JournalRecord record)
    {
        var rest = record.Body is Entry entry ? Lines.RemoveAll(l => IsIn(l, entry)) : Lines;
        return rest.Exists(l => !l.IsEmpty) ? this with { Lines = rest } : null;
    }

    private static bool IsIn(DraftLine line, Entry entry) => line.Text is null
        ? line.Remark is null || entry.Remark?.Contains($"{line.Point}: {line.Remark}", StringComparison.Ordinal) == true
        : entry.Readings.Any(r => r.Point == line.Point && r.At == line.At);

    /// <summary>The drafts in the lines of a file: one, unless somebody wrote in it.</summary>
    public static IReadOnlyList<Draft> Of(IEnumerable<DraftLine> lines) =>
    [
        .. lines.GroupBy(l => (l.Round, l.By, l.SecondOf))
            .Select(g => g.Aggregate((Draft?)null, Put)).OfType<Draft>(),
    ];
}

/// <summary>A draft that an earlier session left behind.</summary>
internal sealed record LeftDraft(string File, Draft Draft);
