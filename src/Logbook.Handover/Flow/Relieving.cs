using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The line changes hands without a full handover, or is left.</summary>
public static class Relieving
{
    /// <summary>A short relief lasts less than this. Judgement, no source.</summary>
    public static readonly TimeSpan ShortRelief = TimeSpan.FromHours(1);

    /// <summary>For less than an hour, and back: one PIN, one line.</summary>
    public static Handed Short(Desk desk, SignWith sign, string by, string words) => Handed.Step(
        desk, by,
        () => Given.Text(words, "the line of the relief"),
        () => WhyNotShort(desk, by),
        () =>
        {
            var holder = desk.State.Line.Holder!;
            var (signed, refused) = Signing.Sign(desk, sign, by, Signing.ShortRelief, holder.Code);
            return signed is null ? (null, refused) : (new HandoverRelief("short", holder.Code, words.Trim(), signed), null);
        });

    /// <summary>At once, without a PIN, whatever else is unfinished: an injured or called-away person never strands the line.</summary>
    public static Handed Emergency(Desk desk, string by, string reason) => Handed.Step(
        desk, by,
        () => Handed.ReasonFrom(desk.Site.Reasons.Relief, reason),
        () => Holds(desk, by) ? $"{Say.Person(desk.Site, by)} holds the line already" : null,
        () => Body(desk, "emergency", reason, Signing.Emergency));

    /// <summary>The holder has to go and nobody is there to take over.</summary>
    public static Handed Leave(Desk desk, string by, string reason) => Handed.Step(
        desk, by,
        () => Handed.ReasonFrom(desk.Site.Reasons.Relief, reason),
        () => Holds(desk, by) ? null : "only who holds the line can leave it",
        () => Body(desk, "left", reason, Signing.Left));

    /// <summary>True when a short relief has lasted too long to be one.</summary>
    public static bool IsOver(Holder holder, DateTimeOffset now) => holder.ReliefBegan is { } began && now - began >= ShortRelief;

    private static string? WhyNotShort(Desk desk, string by)
    {
        var (line, site) = (desk.State.Line, desk.Site);
        return line.Holder is not { } holder ? "NOBODY HOLDS THE LINE: there is nobody to relieve; take it over with: handover accept --unattended REASON"
            : Handed.Same(holder.Code, by) ? $"{Say.Person(site, by)} holds the line already"
            : line.NotYet is { } held ? $"not yet: {Say.Visible(held.Why)}; in an emergency: handover relief --emergency"
            : IsOver(holder, desk.Now) ? $"the short relief began at {Say.Time(site, holder.ReliefBegan!.Value, desk.Now)}, an hour or more ago: hand over in full, handover prepare and accept"
            : null;
    }

    private static HandoverRelief Body(Desk desk, string mode, string reason, string means) => new(
        mode, desk.State.Line.Holder?.Code, Reason.Find(desk.Site.Reasons.Relief, reason)!, new Signed("none", means, null, null));

    private static bool Holds(Desk desk, string by) => desk.State.Line.Holder is { } holder && Handed.Same(holder.Code, by);
}
