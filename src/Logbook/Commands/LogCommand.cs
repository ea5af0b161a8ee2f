using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>The records in order, in words.</summary>
internal static class LogCommand
{
    internal static readonly Rows<LogLine> Listing = new("log",
        new("seq", l => l.Seq), new("at", l => l.At), new("typed", l => l.Entered - l.At > TimeSpan.FromHours(1) ? l.Entered : null), new("by", l => l.By), new("kind", l => l.Kind), new("area", l => l.Area),
        new("worst", l => l.Worst is { } w ? Json.Word(w) : null), new("words", l => l.Words), new("shift", l => l.Shift, InText: false), new("entered", l => l.Entered, InText: false));

    public static Command Make(Shell shell)
    {
        var from = Options.From();
        var to = Options.To();
        var about = new Option<long?>("--about") { Description = "A record, and all that belong to it: its item, correction, answer, remarks. Of a step of the handover also what exactly was signed, declared and seen, in words.", HelpName = "SEQ" };
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("log", $"The records in order: this shift's unless said. {Listing.Keys}") { from, to, about, json, asOf };
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) =>
            parse.GetValue(about) is { } seq
                ? About(shell, desk, seq, parse.GetValue(json))
                : Options.Span(shell, parse, desk, (from, Calendar.ShiftAt(desk.Site, desk.Now).Start), (to, desk.Now.AddMinutes(1)), (begin, end) =>
                    Listing.Print(shell, parse.GetValue(json), LogLine.Of(desk, desk.Store.Between(begin, end)), "no record in this span")), asOf));
        return command;
    }

    private static int About(Shell shell, Desk desk, long seq, bool json)
    {
        if (seq < 1 || seq > desk.State.Head.Seq)
        {
            return shell.Refuse($"there is no record {seq}", desk.State.Head.Seq == 0 ? "the journal has none yet" : $"1 to {desk.State.Head.Seq}");
        }

        var code = Listing.Print(shell, json, LogLine.Of(desk, RecordLinks.About(desk, seq)), whenEmpty: "");
        if (!json)
        {
            PageOut.Sections(shell.Out, SignedInWords.Of(desk, desk.Store.Read(seq).First()));
        }

        return code;
    }
}
