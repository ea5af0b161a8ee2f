using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Steps after which the line stays where it is.</summary>
public static class Staying
{
    /// <summary>The receiver does not take over what was prepared. The holder stays in charge and a supervisor is told.</summary>
    public static Handed Refuse(Desk desk, string by, string why) => Handed.Step(
        desk, by,
        () => Given.Text(why, "the reason for refusing"),
        () => WhyNotRefuse(desk.Site, desk.State.Line, by),
        () => new HandoverRefused(why.Trim()));

    /// <summary>Why this person cannot refuse just now; null when it can be.</summary>
    public static string? WhyNotRefuse(Site site, LineHeld line, string by) => line switch
    {
        { Holder: null } => "NOBODY HOLDS THE LINE: there is no handover to refuse",
        { Holder: { } holder } when Handed.Same(holder.Code, by) => "the holder does not refuse the own handover: handover not-yet",
        { Prepared: null, Holder: { } holder } => $"{Say.Person(site, holder.Code)} has prepared nothing yet: there is no handover to refuse",
        _ => null,
    };

    /// <summary>The holder keeps the line: a critical step is running. Preparing anew ends it.</summary>
    public static Handed NotYet(Desk desk, string by, string reason) => Handed.Step(
        desk, by,
        () => Handed.ReasonFrom(desk.Site.Reasons.NotYet, reason),
        () => OnlyHolder(desk, by),
        () => new HandoverNotYet(Reason.Find(desk.Site.Reasons.NotYet, reason)!));

    /// <summary>The same person goes on over a shift change, having looked at what can hurt.</summary>
    public static Handed Continue(Desk desk, string by, string why) => Handed.Step(
        desk, by,
        () => Given.Text(why, "the reason for going on"),
        () => OnlyHolder(desk, by) ?? NotLooked(desk, by),
        () => new HandoverContinued(why.Trim()));

    private static string? OnlyHolder(Desk desk, string by) => desk.State.Line.Holder is not { } holder
        ? "NOBODY HOLDS THE LINE"
        : Handed.Same(holder.Code, by) ? null : $"{Say.Person(desk.Site, holder.Code)} holds the line: only the holder says so";

    private static string? NotLooked(Desk desk, string by) =>
        desk.State.Line.Seen.Find(s => Handed.Same(s.By, by) && s.Page == "hazards") is not { } seen ? "not seen yet: hazards; who goes on looks at what can hurt first: handover open hazards"
        : SincePrepared.Hurting(desk, seen.UpTo).Any() ? "something that can hurt came since the hazards page was opened: handover open hazards"
        : null;
}
