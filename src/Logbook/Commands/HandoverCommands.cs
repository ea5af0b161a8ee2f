using System.CommandLine;
using System.Globalization;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Notes;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Commands;

/// <summary>The handover: its notes, and its steps.</summary>
internal static class HandoverCommands
{
    public static Command Make(Shell shell) => Steps(shell, new Command("handover", "Who holds the line, and the note that is handed over. It reminds; it does not replace the talk, site procedures, permits or qualified judgement.") { Draft(shell), Show(shell) });

    private static Command Steps(Shell shell, Command handover)
    {
        foreach (var step in GivingCommands.All(shell).Concat(TakingCommands.All(shell)))
        {
            handover.Add(step);
        }

        return handover;
    }

    private static Command Draft(Shell shell)
    {
        var print = new NotePrint(shell, "handover, the page that is handed over, or long: with all that it sums up.", "handover", "long");
        var asOf = Options.AsOf();
        var command = new Command("draft", "The note that is in hand, as it stands.") { asOf };
        print.AddTo(command);
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk => print.Write(shell, parse, print.Kind(parse) switch
        {
            NoteKind.Long => LongNote.InHand(desk),
            _ => HandoverNote.InHand(desk),
        }), asOf));
        return command;
    }

    private static Command Show(Shell shell)
    {
        var shift = new Argument<string?>("SHIFT") { Arity = ArgumentArity.ZeroOrOne, Description = "A shift's id, 2026-11-24-N-C, or the number of the record that accepted a note; unless said the note that was accepted last, for a week the one that ends with the last ended shift." };
        var print = new NotePrint(shell, "handover, the page that is handed over; long, with all that it sums up; week, the seven days that end with the shift, for the supervisor.", "handover", "long", "week");
        var command = new Command("show", "A note that was accepted, or of a shift that has ended.") { shift };
        print.AddTo(command);
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) =>
        {
            var running = Calendar.ShiftAt(desk.Site, desk.Now);
            var (id, kind) = (parse.GetValue(shift), print.Kind(parse));
            long? seq = long.TryParse(id?.TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
            if ((seq is not null || (id is null && kind != NoteKind.Week)) && HandoverNote.Accepted(desk, seq) is var (note, began))
            {
                return kind switch
                {
                    NoteKind.Week => print.Write(shell, parse, WeekNote.Of(desk, began)),
                    NoteKind.Long => print.Write(shell, parse, LongNote.Of(desk, note, began)),
                    _ => print.Write(shell, parse, note),
                };
            }

            DateTimeOffset? at = id is null ? running.Start.AddSeconds(-1) : Find(desk.Site, id)?.Start;
            return at is not { } moment ? shell.Refuse(
                seq is null ? $"there is no shift {id}" : $"record {seq} accepted no note", $"an id such as {running.Id}: start date, shift, crew; or the number of an acceptance") : kind switch
            {
                NoteKind.Week => print.Write(shell, parse, WeekNote.Of(desk, moment)),
                NoteKind.Long => print.Write(shell, parse, LongNote.Of(desk, moment)),
                _ => print.Write(shell, parse, HandoverNote.Of(desk, moment)),
            };
        }, computes: print.Kind(parse) == NoteKind.Week));
        return command;
    }

    private static ShiftInstance? Find(Site site, string id) =>
        DateOnly.TryParse(id.Length >= 10 ? id[..10] : id, CultureInfo.InvariantCulture, out var date) && date.Year is > 1900 and < 9999
            ? Calendar.Shifts(site, Noon(site, date.AddDays(-1)), Noon(site, date.AddDays(1))).FirstOrDefault(s => s.Id.StartsWith(id, StringComparison.OrdinalIgnoreCase))
            : null;

    private static DateTimeOffset Noon(Site site, DateOnly date)
    {
        var noon = date.ToDateTime(new TimeOnly(12, 0));
        return new DateTimeOffset(noon, site.Zone.GetUtcOffset(noon));
    }
}
