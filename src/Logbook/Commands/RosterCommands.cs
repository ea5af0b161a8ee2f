using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Who works when: changes against the pattern, who was due and who was there, shifts in a row.</summary>
internal static class RosterCommands
{
    private static readonly Rows<ShiftDuty> Shifts = new("roster",
        new("shift", d => d.Shift.Id), new("start", d => d.Shift.Start), new("end", d => d.Shift.End),
        new("due", d => d.Due), new("wrote", d => d.Wrote), new("took_over", d => d.Took), new("differs", d => d.Differs));

    private static readonly Rows<WorkCount> Counts = new("count",
        new("person", c => c.Person), new("in_a_row", c => c.InARow), new("hours", c => c.Hours), new("since", c => c.Since), new("longest", c => c.Longest));

    public static Command Make(Shell shell) => new("roster", "Who works when. The roster only predicts: who was there is who signed or wrote.") { Add(shell), List(shell), Count(shell) };

    private static Command Add(Shell shell)
    {
        var what = new Argument<string>("WHAT") { Description = "swap, holdover or holiday." };
        var person = new Argument<string>("CODE") { Description = "The person who works, stays on, or is off." };
        var replaced = Options.Text("--for", "In a swap: who is replaced.", "CODE");
        var (from, to) = (Options.From(), Options.To());
        var why = Options.Text("--why", "Why.", "TEXT");
        return WriteCommand.Make(shell, "add", "A change against the pattern.", "noted", [what, person, replaced, from, to, why], (parse, desk, by, mistakes) =>
        {
            var begin = Options.Time(parse, from, desk.Site, desk.Now, mistakes);
            var end = Options.Time(parse, to, desk.Site, desk.Now, mistakes);
            if (mistakes.Count == 0 && (begin is null || end is null))
            {
                mistakes.Add(Mistake.Typed("a change of the roster needs its begin and its end", "--from T --to T"));
            }

            return () => Writing.ChangeRoster(
                desk, new RosterChange(parse.GetValue(what)!, parse.GetValue(person)!, parse.GetValue(replaced), begin!.Value, end!.Value, parse.GetValue(why)), by);
        });
    }

    private static Command List(Shell shell)
    {
        var (from, to, json, asOf) = (Options.From(), Options.To(), Options.Json(), Options.AsOf());
        var command = new Command("list", $"Each shift: who was due, who wrote, who took over. The last seven days unless said. {Shifts.Keys}") { from, to, json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk => Options.Span(
            shell, parse, desk, (from, desk.Now.AddDays(-7)), (to, desk.Now),
            (begin, end) => Shifts.Print(shell, parse.GetValue(json), ShiftDuty.Of(desk, begin, end), "no shift in this span")), asOf));
        return command;
    }

    private static Command Count(Shell shell)
    {
        var (json, asOf) = (Options.Json(), Options.AsOf());
        var command = new Command("count", $"Shifts in a row and their hours since the last break of 36 hours. To know, not to block; the site's rules decide. {Counts.Keys}") { json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk => Counts.Print(
            shell, parse.GetValue(json), WorkCount.Of(desk).Select(c => c with { Hours = Math.Round(c.Hours, 2), Longest = Math.Round(c.Longest, 2) }), "nobody is within a set of shifts"), asOf));
        return command;
    }
}
