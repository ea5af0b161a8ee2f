using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What a defeated trip's line says of the check that stands in for it: its last value, how that lies to its limits, and when it was missed.</summary>
internal static class DefeatedTrip
{
    public static string LastRead(Site site, State state, CarriedItem item, DateTimeOffset now)
    {
        if (item.Fields.GetValueOrDefault("point") is not { } tag)
        {
            return "";
        }

        var notRead = InsteadOfTrips.NotRead(site, state, item, now) is var (gap, every) ? $" NOT READ for {Say.Span(gap)}, due each {Say.Span(every)}." : "";
        if (state.Latest.GetValueOrDefault(tag) is not { Value: { } value } last || last.At < item.Since)
        {
            return $" {Say.Visible(tag)} has not been read since.{notRead}";
        }

        var point = site.FindPoint(tag);
        var doubt = state.Findings.GetValueOrDefault(tag)?.Find(f => Doubted.Doubts(f.Finding)) is { } open ? $" DOUBTED: {FindingText.AtLeast(site, open.Finding)} {Say.Ref(open.Finding.Of ?? open.Seq)}." : "";
        return $" {Say.Visible(tag)} last {Say.Time(site, last.At, now)}, {Say.Value(point, value, last.Unit)}{(point is null ? "" : Beyond(point, value))} {Say.Ref(last.Seq)}.{doubt}{notRead}";
    }

    /// <summary>Checks of the running shift that were not made, and those that were read or typed late: nobody could see them when they were due.</summary>
    /// <param name="notOnTime">See <see cref="InsteadOfTrips.NotOnTime"/>.</param>
    public static string NotOnTime(Site site, CarriedItem item, IReadOnlyDictionary<long, IReadOnlyList<DueCheck>> notOnTime, DateTimeOffset now)
    {
        var checks = notOnTime.GetValueOrDefault(item.Id, []);
        var missed = checks.Where(c => c.State == CheckState.Missed).Select(c => Say.Time(site, c.DueAt, now) + (c.TypedLater ? $" ({c.Why} {Say.Ref(c.Seq!.Value)})" : "")).ToList();
        var late = checks.Where(c => c.State == CheckState.Late).Select(c => $" That of {Say.Time(site, c.DueAt, now)} was {c.Why}{(c.Seq is { } seq ? $" {Say.Ref(seq)}" : "")}.");
        return $"{(missed.Count == 0 ? "" : $" This check was MISSED at {string.Join(", ", missed)}.")}{string.Concat(late)}";
    }

    /// <summary>Who let it be defeated: a person of the site by name, anybody else as it was typed; only said to be so until that person has signed.</summary>
    public static string Allowed(Site site, State state, CarriedItem item) =>
        state.Line.ToCountersign.Find(t => t.Seq == item.Id && t.Named is not null) is { } open ? $" {Countersigning.Allowed(site, open)}."
        : item.Fields.FirstOrDefault(f => AllowedBy.Contains(f.Key, StringComparer.OrdinalIgnoreCase)) is { Value: { Length: > 0 } by } ? $" Allowed by {Say.Person(site, by)}." : " Nothing is recorded of who allowed it.";

    /// <summary>Names of the field that says who allowed it: today's first, then those of older records.</summary>
    public static readonly IReadOnlyList<string> AllowedBy = ["allowed-by", "allowed by", "allowed"];

    private static string Beyond(Point point, double value)
    {
        var limits = point.Limits;
        (double? Limit, int Side, string Words)[] all =
        [
            (limits.UrgentHigh, 1, "ABOVE its urgent limit"), (limits.UrgentLow, -1, "BELOW its urgent limit"),
            (limits.WatchHigh, 1, "above its watch limit"), (limits.WatchLow, -1, "below its watch limit"),
        ];
        return all.Where(l => l.Limit is { } limit && (value - limit) * l.Side > 0).Select(l => $", {l.Words} {Say.Value(point, l.Limit!.Value, point.Unit.Name)}").FirstOrDefault("");
    }
}
