using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>An upset declared, a finding answered, a jump of the clock looked at.</summary>
internal static class LineCommands
{
    public static Command Upset(Shell shell)
    {
        var since = Options.Text("--since", "Since when; now unless said.", "TIME");
        var at = Options.Text("--at", "When it was over; now unless said.", "TIME");
        var why = Options.Text("--why", "What it is.", "TEXT");
        var begin = WriteCommand.Make(
            shell, "begin", "Declares an upset: until it is over, rounds other than safety points are one line, not a miss each.", "upset declared", [since, why],
            (parse, desk, by, mistakes) =>
            {
                var from = Options.Time(parse, since, desk.Site, desk.Now, mistakes);
                return () => Writing.BeginUpset(desk, from, parse.GetValue(why), by);
            });
        var end = WriteCommand.Make(shell, "end", "Says that the upset is over.", "upset over", [at, why], (parse, desk, by, mistakes) =>
        {
            var to = Options.Time(parse, at, desk.Site, desk.Now, mistakes);
            return () => Writing.EndUpset(desk, to, parse.GetValue(why), by);
        });
        return new Command("upset", "An upset of the line: begin, end.") { begin, end };
    }

    public static Command Answer(Shell shell)
    {
        var finding = new Argument<string>("SEQ.N") { Description = "The finding, as the log and 'now' show it: 812.1." };
        var text = new Argument<string>("TEXT") { Description = "Cause, what was done, who was told." };
        return WriteCommand.Make(shell, "answer", "Says what was done about a finding.", "answered", [finding, text],
            (parse, desk, by, _) => () => Writing.Answer(desk, parse.GetValue(finding)!, parse.GetValue(text)!, by));
    }

    public static Command Clock(Shell shell)
    {
        var id = new Argument<long?>("ID") { Arity = ArgumentArity.ZeroOrOne, Description = "Which jump; needed when several are open." };
        var why = Options.Text("--why", "What was found about it.", "TEXT");
        var ack = WriteCommand.Make(shell, "ack", "Says that you have looked at a clock that jumped back. Times of records stay as they are.", "acknowledged", [id, why],
            (parse, desk, by, _) => () => Writing.AcknowledgeClock(desk, parse.GetValue(id), parse.GetValue(why) ?? "", by));
        return new Command("clock", "Jumps of the clock.") { ack };
    }

    public static Command CarryConfirm(Shell shell)
    {
        var id = new Argument<long>("ID");
        var changed = Options.Text("--changed", "What is different now; still so unless said.", "TEXT");
        var notSeen = new Option<bool>("--not-seen") { Description = "It was not found, or nobody went." };
        var step = Options.Text("--lock", "on or off: your own lock at an isolation. The incoming person's goes on first.", "STEP");
        var set = Options.Many("--set", "A field with a new value (inside=0, status=lost); may be repeated.", "NAME=VALUE");
        var until = Options.Text("--until", "Its new end, when it goes on longer or ends earlier; the old one stays in the record.", "TIME");
        var owner = Options.Text("--owner", "Code of who owns it from now on: the one before is away. Whose lock is on does not change by it.", "CODE");
        const string Help = "Says how an open item was found: still so, changed, or not seen. Hazards each shift, others each week. Counting people out is signed by PIN, but by the one whose count stands.";
        return new Step(shell, "confirm", Help, id, changed, notSeen, step, set, until, owner).Signs("confirmed", (desk, parse, sign, by) =>
        {
            var mistakes = new List<Mistake>();
            var look = new CarryConfirmed(
                parse.GetValue(id), !parse.GetValue(notSeen), parse.GetValue(changed), Options.Fields(parse.GetValue(set) ?? [], mistakes), parse.GetValue(step))
            {
                Until = Options.Ahead(parse, until, desk.Site, desk.Now, mistakes), Owner = parse.GetValue(owner),
            };
            desk.Follow();
            var before = desk.State.Carried.Find(i => i.Id == look.Id);
            var confirmed = mistakes.Count > 0 ? new Handed(null, mistakes, null) : SignedWriting.Confirm(desk, sign, look, by);
            if (confirmed.Record is not null && desk.State.Carried.Find(i => i.Id == look.Id) is { } item)
            {
                CautionText.YetRecorded(shell, desk, item.On);
                CautionText.NewOwner(shell, desk.Site, before ?? item, look);
                CautionText.LockOff(shell, desk, before ?? item, look, by);
            }

            return confirmed;
        });
    }
}
