using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Each check of the shift, or of a span: due, done, late, not taken, missed.</summary>
internal static class DueCommand
{
    private static readonly Rows<DueCheck> Listing = new("due",
        new("round", d => d.Round), new("point", d => d.Point), new("due_at", d => d.DueAt), new("closes", d => d.Closes),
        new("state", d => NowCommand.Word(d.State)), new("taken_at", d => d.TakenAt), new("by", d => d.By), new("seq", d => d.Seq), new("why", d => d.Why),
        new("shift", d => d.ShiftId, InText: false));

    public static Command Make(Shell shell)
    {
        var all = new Option<bool>("--all") { Description = "Also what is done, taken late, or not due yet." };
        var from = Options.From();
        var to = Options.To();
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("due", $"What is due, missed or not taken in this shift, or from --from to --to; without --to also what is to be read next instead of a defeated trip. {Listing.Keys}") { all, from, to, json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var shift = Calendar.ShiftAt(desk.Site, desk.Now);
            var begin = Options.Time(parse, from, desk.Site, desk.Now, mistakes) ?? shift.Start;
            var end = Options.Time(parse, to, desk.Site, desk.Now, mistakes) ?? shift.End;
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            // What stands in for a defeated trip is told before it is due, over the shift change too.
            var next = parse.GetValue(to) is null ? InsteadOfTrips.Next(desk).Select(n => (Round: InsteadOfTrips.RoundId(n.Item.Id), n.DueAt)).ToHashSet() : [];
            var until = next.Select(n => n.DueAt.AddTicks(1)).Append(end).Max();
            var checks = DueList.Between(desk, begin, until).Where(d => next.Contains((d.Round, d.DueAt))
                || (d.DueAt < end && (parse.GetValue(all) || d.State is CheckState.Due or CheckState.Missed or CheckState.NotTaken)));
            return Listing.Print(shell, parse.GetValue(json), checks, "nothing is due, missed or not taken in this span");
        }, asOf));
        return command;
    }
}
