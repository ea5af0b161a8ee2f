using System.Collections.Immutable;

namespace Logbook.Journal;

/// <summary>What the journal knows of a person beside the site's files.</summary>
public sealed record Standing
{
    private static readonly Standing Fresh = new();

    /// <summary>How long somebody must have written nothing to count as having been away.</summary>
    public static readonly TimeSpan Away = TimeSpan.FromHours(8);

    /// <summary>True when the person writes no more. Old records keep the name.</summary>
    public bool Closed { get; init; }

    /// <summary>The record that set or reset the PIN last; null when none did.</summary>
    public long? Pin { get; init; }

    /// <summary>The record that reset the PIN, until the next signature by PIN.</summary>
    public long? Reset { get; init; }

    /// <summary>Records signed by a witness for this person and not confirmed yet.</summary>
    public ImmutableList<long> ToConfirm { get; init; } = [];

    /// <summary>The last record that the person wrote; null when there is none.</summary>
    public Moment? Last { get; init; }

    /// <summary>The last record of the time before this one: what came after it is new to the person.</summary>
    public Moment? Before { get; init; }

    internal static ImmutableDictionary<string, Standing> After(ImmutableDictionary<string, Standing> people, JournalRecord record)
    {
        if (record.Body is PersonChanged change)
            people = people.SetItem(change.Code, people.GetValueOrDefault(change.Code, Fresh).Changed(record, change));
        // An import brings the past of others, and a PIN is set by whoever is about to come: neither is having been here.
        if (record.Body is Entry { Imported: not null } or PersonChanged)
            return people;
        var writer = people.GetValueOrDefault(record.By, Fresh).Wrote(record);
        return people.SetItem(record.By, SignedOf(record.Body) is { } signed ? writer.Signed(record, signed) : writer);
    }

    /// <summary>The signature of a record that carries one.</summary>
    public static Signed? SignedOf(RecordBody body) => body switch
    {
        HandoverPrepared p => p.Signed,
        HandoverAccepted a => a.Signed,
        HandoverRelief r => r.Signed,
        HandoverCountersigned c => c.Signed,
        SiteAdopted adopted => adopted.Signed,
        PluginTrusted trusted => trusted.Signed,
        CarryClosed closed => closed.Signed,
        CarryConfirmed look => look.Signed,
        _ => null,
    };

    private Standing Changed(JournalRecord record, PersonChanged change) => change.Change switch
    {
        "closed" => this with { Closed = true },
        "pin-set" => this with { Pin = record.Seq },
        "pin-reset" => this with { Pin = record.Seq, Reset = record.Seq },
        "confirmed" when change.Target is { } seq => this with { ToConfirm = ToConfirm.Remove(seq) },
        _ => this,
    };

    private Standing Wrote(JournalRecord record)
    {
        var now = new Moment(record.Seq, record.Entered);
        return this with { Last = now, Before = Last is { } last && now.At - last.At > Away ? last : Before };
    }

    private Standing Signed(JournalRecord record, Signed signed) => signed.How switch
    {
        "pin" => this with { Reset = null },
        "witness" => this with { ToConfirm = ToConfirm.Add(record.Seq) },
        _ => this,
    };
}

public sealed record Moment(long Seq, DateTimeOffset At);
