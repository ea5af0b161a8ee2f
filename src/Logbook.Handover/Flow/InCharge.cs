using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Who holds the line, in words.</summary>
internal static class InCharge
{
    public static string Of(Desk desk)
    {
        var (site, line, now) = (desk.Site, desk.State.Line, desk.Now);
        return line.Holder is { } holder ? Held(site, holder, now)
            : $"NOBODY HOLDS THE LINE{(line.NobodySince is { } at ? $" since {Say.Time(site, at, now)}" : "")}; call {Supervisors(desk)}";
    }

    /// <summary>What is unfinished about the handover, each in one line.</summary>
    public static IReadOnlyList<string> Unfinished(Desk desk)
    {
        var (site, line, now) = (desk.Site, desk.State.Line, desk.Now);
        string Name(string code) => Say.Person(site, code);
        string At(DateTimeOffset at) => Say.Time(site, at, now);
        return
        [
            .. line.Holder is null ? [Nobody(desk, line)] : Array.Empty<string>(),
            .. line.Unread.IsEmpty ? [] : new[] { $"{Name(line.Holder!.Code)} took the line without reading: still to open {string.Join(", ", line.Unread)}" },
            .. line.NotYet is { } held ? [$"not yet, since {At(held.At)}: {Say.Visible(held.Why)}; {Name(line.Holder!.Code)} stays"] : Array.Empty<string>(),
            .. line.Prepared is { } p ? [$"prepared by {Name(p.By)} at {At(p.At)} {Say.Ref(p.Seq)}"] : Array.Empty<string>(),
            .. line.Questions.Select(q => $"asked by {Name(q.By)} at {At(q.At)}, no answer yet: {Say.Visible(q.Text)} {Say.Ref(q.Seq)}"),
            .. line.ToCountersign.Where(t => t.Named is null).Select(t => $"{t.What}, {Name(t.By)} {At(t.At)}, a supervisor has still to sign {Say.Ref(t.Seq)}{(Calendar.ShiftAt(site, t.At).End <= now ? "; the shift is over" : "")}"),
            .. desk.State.People.OrderBy(p => p.Key, StringComparer.Ordinal).SelectMany(p => p.Value.ToConfirm.Select(seq => $"identity of {Name(p.Key)} in {Say.Ref(seq)} to be confirmed: a witness signed")),
        ];
    }

    /// <summary>Whom to call, in words.</summary>
    public static string Supervisors(Desk desk) =>
        desk.Site.People.Where(p => p.Role == Role.Supervisor && !desk.State.IsClosed(p.Code)).Select(p => $"{Say.Visible(p.Name)} ({Say.Visible(p.Code)})").ToList() is { Count: > 0 } all
            ? string.Join(" or ", all)
            : "the site's supervisor";

    private static string Held(Site site, Holder holder, DateTimeOffset now)
    {
        var name = Say.Person(site, holder.Code);
        var since = $"{name} holds the line since {Say.Time(site, holder.Since, now)}";
        var shift = Calendar.ShiftAt(site, holder.Since);
        // Taken a little before the change it belongs to the shift that follows.
        var begun = shift.End - holder.Since < (shift.End - shift.Start) / 2 ? Calendar.ShiftAt(site, shift.End) : shift;
        var hours = now > begun.End ? $", {Say.Count((int)(now - holder.Since).TotalHours, "hour")}, past the shift's end" : "";
        var continued = holder.Continued is { } at ? $", continues ({Say.Time(site, at, now)})" : "";
        return since + hours + continued + holder.How switch
        {
            "short" => $", short relief of {Say.Person(site, holder.For!.Code)}"
                + (Relieving.IsOver(holder, now) ? ", OVER AN HOUR: hand over in full" : ""),
            "emergency" => ", emergency relief",
            "unattended" => ", taken over unattended",
            _ => "",
        };
    }

    private static string Nobody(Desk desk, LineHeld line)
    {
        var shift = Calendar.ShiftAt(desk.Site, desk.Now);
        var due = $"crew {shift.Crew} is due until {Say.Time(desk.Site, shift.End, desk.Now)}";
        return line.Called is { } called
            ? $"{Say.Person(desk.Site, called.Code)} answered at {Say.Time(desk.Site, called.At, desk.Now)}: {Say.Sentence(called.Text)} {due}"
            : $"{due}; who answered the call? handover called CODE TEXT";
    }
}
