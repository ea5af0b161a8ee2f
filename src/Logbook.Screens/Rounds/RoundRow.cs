using System.Collections.Immutable;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A reading of this round that is in the journal.</summary>
/// <param name="Text">What was typed; <c>-</c> when it was not taken.</param>
internal sealed record SavedReading(long Seq, string Text, string? Why, DateTimeOffset At)
{
    /// <summary>What the journal says of its entry and is not settled, worst first.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>One point of a round as it is being typed.</summary>
internal sealed record RoundRow(Point Point)
{
    /// <summary>What was typed and is not in the journal.</summary>
    public DraftLine? Line { get; init; }

    /// <summary>What the journal has of it for this round.</summary>
    public SavedReading? Saved { get; init; }

    public RowCheck Check { get; init; } = RowCheck.None;

    /// <summary>The newest values, oldest first. Shown only when the row is answered.</summary>
    public IReadOnlyList<SeriesValue> Past { get; init; } = [];

    /// <summary>Why it is not asked for in this slot: its equipment rests. Null when it is; it may be typed all the same.</summary>
    public string? Rests { get; init; }

    /// <summary>It is to be typed: asked for, and open.</summary>
    public bool IsAsked => Rests is null && !Answered;

    /// <summary>Counted among what is to be done.</summary>
    public bool Applies => Rests is null || Answered;

    /// <summary>What stands in the row; null while it is open.</summary>
    public string? Text => Line?.Text ?? Saved?.Text;

    public string? Why => Line?.Text is not null ? Line.Why : Saved?.Why;

    public bool Answered => Text is not null;

    public bool NotTaken => Text is "-";

    /// <summary>Said where it is typed again after it was saved: the journal keeps both, and a second value is no correction of the first. Null where nothing is saved.</summary>
    public string? FirstStays => Saved is { } saved ? $"{Point.Tag} {saved.Text} {Say.Ref(saved.Seq)} STAYS: if mistyped, put it right in the log: c" : null;

    /// <summary>The value before this one.</summary>
    public SeriesValue? Before => Past.LastOrDefault(v => v.Seq != Saved?.Seq && v.At < (Line?.At ?? Saved?.At ?? DateTimeOffset.MaxValue));

    /// <summary><c>103.4 degC</c>, or a choice by its words.</summary>
    public string Value(Site site) => NotTaken ? $"not taken ({Why})"
        : Number is { } number ? Say.Value(site.FindPoint(Point.Tag), number, Point.Unit.Name)
        : Text ?? "";

    /// <summary>The typed number when it is in the point's own unit.</summary>
    public double? Number => Text is { } text && Typed.Number(text, Place.Unknown, out _) is { } value ? value : null;

    /// <summary>How it moved since the value before, in words.</summary>
    public string Change()
    {
        if (Point.Choices.Count > 0 || Number is not { } value || Before?.Value is not { } before)
        {
            return "";
        }

        var change = Math.Round(value - before, Point.Decimals);
        return change == 0 ? "as before" : $"{(change > 0 ? "up" : "down")} {Say.Number(Math.Abs(change), Point.Decimals)}";
    }
}

/// <summary>A computed number under the readings that it comes from.</summary>
internal sealed record ResultRow(Point Point, Result Result, Level? Worst)
{
    /// <summary>
    /// What an entry computes with its newest line, each with the worst that its limits say. What the other lines beside it make is left
    /// as it stands: not all that it needs was judged with this line, and the journal has older readings of the rest.
    /// </summary>
    /// <param name="newest">The tag of the line that the entry was judged for.</param>
    public static ImmutableDictionary<string, ResultRow> Merge(ImmutableDictionary<string, ResultRow> known, Site site, Links links, string newest, Entry entry)
    {
        foreach (var result in entry.Results)
        {
            if (result.Point is { } tag && links.Makes(newest, tag) && site.FindPoint(tag) is { } point)
            {
                var findings = entry.Findings.Where(f => f.Point == tag).ToList();
                known = known.SetItem(tag, new ResultRow(point, result, findings.Count == 0 ? null : findings.Max(f => f.Level)));
            }
        }

        return known;
    }
}
