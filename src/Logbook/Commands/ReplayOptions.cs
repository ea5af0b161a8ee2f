using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Checks.Examining;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>The cross-examination over the past, as it is in force or with what is tried in its place.</summary>
internal sealed class ReplayOptions
{
    private static readonly Rows<ReplayedFinding> Said = new("findings",
        new("seq", f => f.Seq), new("at", f => f.At), new("level", f => Json.Word(f.Finding.Level)), new("code", f => f.Finding.Code), new("point", f => f.Finding.Point), new("text", f => f.Finding.Text));

    private static readonly Rows<ShiftLoad> Loads = new("shifts",
        new("shift", s => s.Shift), new("demands", s => s.Demands), new("doubts", s => s.Doubts), new("notes", s => s.Notes));

    private static readonly Rows<TriedLimit> Limits = new("limits",
        new("point", l => l.Point), new("description", l => l.Description), new("then", l => l.Then), new("tried", l => l.Tried));

    private readonly Option<bool> _replay = new("--replay")
    {
        Description = "What today's rules would have said from --from to --to (the last seven days unless said), how often, and how much each shift would have been asked.",
    };

    private readonly Option<bool> _folder = new("--folder")
    {
        Description = "With --replay: by the limits of the folder's files, put in force or not, in place of those of each entry's day.",
    };

    private readonly Option<string?> _learnedFrom = Options.Text("--learned-from", "With --replay: by what the entries from then to --learned-to teach, in place of the fit in force. It is put in force by nobody.", "TIME");
    private readonly Option<string?> _learnedTo = Options.Text("--learned-to", "The end of what is learned from; the begin of the replay unless said.", "TIME");

    public void AddTo(Command command)
    {
        command.Add(_replay);
        command.Add(_folder);
        command.Add(_learnedFrom);
        command.Add(_learnedTo);
    }

    public bool AreGiven(ParseResult parse) => parse.GetValue(_replay) || parse.GetValue(_folder) || parse.GetValue(_learnedFrom) is not null || parse.GetValue(_learnedTo) is not null;

    public int Run(Shell shell, ParseResult parse, Desk desk, DateTimeOffset from, DateTimeOffset to, bool json)
    {
        if (!parse.GetValue(_replay))
        {
            return shell.Refuse([Mistake.Typed("--folder and --learned-from try something on the past", "give --replay with them")]);
        }

        var site = parse.GetValue(_folder) ? desk.Folder : null;
        return site is { Value: null } ? shell.Refuse(site.Mistakes)
            : parse.GetValue(_learnedFrom) is null ? Print(shell, desk, from, to, new ToTry(site?.Value), json)
            : Options.Span(shell, parse, desk, (_learnedFrom, from), (_learnedTo, from), (first, last) => Fitting.Learn(desk, first, last) switch
            {
                (_, { } mistake) => shell.Refuse([mistake]),
                var (learned, _) => Print(shell, desk, from, to, new ToTry(site?.Value, learned), json),
            });
    }

    private static int Print(Shell shell, Desk desk, DateTimeOffset from, DateTimeOffset to, ToTry tried, bool json)
    {
        if (tried.Fit is null && Examine.WhyNot(desk) is { } whyNot)
        {
            return shell.Refuse([Mistake.Typed(whyNot, "")]);
        }

        var report = Replaying.Of(desk, from, to, tried);
        if (json)
        {
            shell.Out.WriteLine(Json.Text(Object(report, tried)));
            return ExitCode.Done;
        }

        Said.Print(shell, json: false, report.Findings, "Nothing would have been said.");
        if (tried.Limits is not null)
        {
            Limits.Print(shell, json: false, report.Limits, "The folder's files have the limits that are in force.");
        }

        Loads.Print(shell, json: false, report.Shifts, "No entry in this span.");
        var over = report.Shifts.Count(s => s.OverBudget);
        shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{report.Examined} entries examined, the gate open at {report.Flagged}; {(over == 0 ? "no shift" : Say.Count(over, "shift"))} over {ShiftLoad.Budget} demands, at most {report.Shifts.Select(s => s.Demands).DefaultIfEmpty(0).Max()}"));
        if (tried.Fit is { } fit)
        {
            shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"By what {fit.Entries} entries from {fit.From:yyyy-MM-dd HH:mm} to {fit.To:yyyy-MM-dd HH:mm} teach; it is not in force: `logbook examine --fit` with --from and --to puts it there"));
        }

        return ExitCode.Done;
    }

    private static JsonObject Object(ReplayReport report, ToTry tried)
    {
        var answer = new JsonObject
        {
            ["from"] = Json.Time(report.From), ["to"] = Json.Time(report.To), ["examined"] = report.Examined, ["flagged"] = report.Flagged,
            ["findings"] = new JsonArray([.. report.Findings.Select(f => new JsonObject { ["seq"] = f.Seq, ["at"] = Json.Time(f.At), ["finding"] = Json.Of(f.Finding) })]),
            ["shifts"] = new JsonArray([.. report.Shifts.Select(s => new JsonObject { ["shift"] = s.Shift, ["demands"] = s.Demands, ["doubts"] = s.Doubts, ["notes"] = s.Notes })]),
        };
        if (tried.Limits is not null)
        {
            answer["limits"] = new JsonArray([.. report.Limits.Select(l => new JsonObject { ["point"] = l.Point, ["description"] = l.Description, ["then"] = l.Then, ["tried"] = l.Tried })]);
        }

        return answer;
    }
}
