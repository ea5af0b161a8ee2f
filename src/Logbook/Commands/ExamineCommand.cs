using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Checks.Examining;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Which reading cannot be right beside the others: of one entry, over the past, and learning it anew.</summary>
internal static class ExamineCommand
{
    private const string Keys =
        "With --json: seq, at, fit, global {statistic, degrees, critical, p}, readings [kind, point, z, glr, adjusted, bias], the most likely first, "
        + "gate {statistic, threshold, onset, open}, verdict {named, with_method, group, text}, compared [quantity, one, other, first, second, unit, difference, usual, surprise, until], waiting, unchecked. "
        + "With --replay --json: from, to, examined, flagged, findings [seq, at, finding], shifts [shift, demands, doubts, notes], with --folder limits [point, description, then, tried].";

    private static readonly Rows<ComparedRow> Comparisons = new("compared",
        new("quantity", c => c.Quantity), new("one", c => c.One), new("first", c => Rounded(c.First)), new("other", c => c.Other), new("second", c => Rounded(c.Second)),
        new("unit", c => c.Unit), new("difference", c => Rounded(c.Difference)), new("usual", c => Rounded(c.Usual)), new("surprise", c => c.Surprise is { } s ? Math.Round(s, 1) : c.Until is { } until ? string.Create(CultureInfo.InvariantCulture, $"from {until:HH:mm} on") : "not heard"));

    public static Command Make(Shell shell)
    {
        var seq = new Argument<long?>("SEQ") { Description = "An entry; the newest that takes part unless given.", Arity = ArgumentArity.ZeroOrOne };
        var fit = new Option<bool>("--fit") { Description = "Learn from the entries of --from to --to (all unless given) what to expect, and put it in force. Needs --why and --by, an engineer's." };
        var why = Options.Text("--why", "Why it is learned anew.", "TEXT");
        var (from, to, json, by) = (Options.From(), Options.To(), Options.Json(), Options.By());
        var command = new Command("examine", $"The cross-examination: which reading cannot be right beside the others. {Keys}") { seq, fit, why, by, from, to, json };
        var replay = new ReplayOptions();
        replay.AddTo(command);
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
            replay.AreGiven(parse)
                ? Options.Span(shell, parse, desk, (from, desk.Now.AddDays(-7)), (to, desk.Now), (begin, end) => replay.Run(shell, parse, desk, begin, end, parse.GetValue(json)))
                : parse.GetValue(fit)
                ? Options.Span(shell, parse, desk, (from, DateTimeOffset.MinValue.AddDays(2)), (to, desk.Now.AddMinutes(1)), (begin, end) =>
                    WrittenOut.Print(shell, parse.GetValue(json), Fitting.Adopt(desk, begin, end, parse.GetValue(why) ?? "", parse.GetValue(by) ?? ""), "fit"))
                : One(shell, desk, parse.GetValue(seq), parse.GetValue(json))));
        return command;
    }

    private static int One(Shell shell, Desk desk, long? seq, bool json)
    {
        if (Examine.WhyNot(desk) is { } whyNot)
        {
            return shell.Refuse([Mistake.Typed(whyNot, "")]);
        }

        var report = seq is { } given ? Examine.Of(desk, given) : Examine.Newest(desk);
        if (report is null)
        {
            return shell.Refuse([seq is { } entry && Examine.WasInUpset(desk, entry) ? Mistake.Typed($"record {entry} was read during an upset", "nothing is compared then")
                : Mistake.Typed(seq is null ? "no entry of the last days has a reading that is compared" : $"record {seq} is no entry with a reading that is compared", "the seq of an entry: `logbook log`")]);
        }

        if (json)
        {
            shell.Out.WriteLine(Json.Text(Object(report)));
            return ExitCode.Done;
        }

        shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Entry {report.Seq}, {report.At:yyyy-MM-dd HH:mm}, by the fit of record {report.Fit}"));
        foreach (var sentence in new[] { report.Text, report.Waiting }.OfType<string>())
        {
            shell.Out.WriteLine(Say.Sentence(sentence));
        }

        Comparisons.Print(shell, json: false, report.Compared, "Nothing was compared in this entry.");
        if (report.Unchecked.Count > 0)
        {
            shell.Out.WriteLine($"In no relation, so nothing can check them: {Say.Visible(string.Join(", ", report.Unchecked))}");
        }

        foreach (var word in Examine.NoWitness(desk))
        {
            shell.Out.WriteLine($"No witness: {Say.Visible(word)}");
        }

        return ExitCode.Done;
    }

    private static double? Rounded(double? value) => value is { } v ? double.Parse(v.ToString("G5", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : null;

    // Shares order the readings and are not given: they are not calibrated, and a number would be read as a probability.
    private static JsonObject Object(ExaminationReport report) => new JsonObject { ["seq"] = report.Seq, ["at"] = Json.Time(report.At), ["fit"] = report.Fit }
        .AddIfPresent("global", report.Global is not { } g ? null : new JsonObject { ["statistic"] = g.Statistic, ["degrees"] = g.Degrees, ["critical"] = g.Critical, ["p"] = g.P })
        .AddIfPresent("readings", new JsonArray([.. report.Readings.Select(r => new JsonObject { ["kind"] = r.Kind, ["point"] = r.Point }
            .AddIfPresent("z", r.Z).AddIfPresent("glr", r.Glr).AddIfPresent("adjusted", r.Adjusted).AddIfPresent("bias", r.Bias))]))
        .AddIfPresent("gate", new JsonObject { ["statistic"] = report.Gate.Statistic, ["threshold"] = report.Gate.Threshold, ["onset"] = report.Gate.Onset, ["open"] = report.Gate.Open })
        .AddIfPresent("waiting", report.Waiting)
        .AddIfPresent("verdict", new JsonObject { ["with_method"] = report.WithMethod, ["text"] = report.Text }
            .AddIfPresent("named", Many(report.Named is { } n ? [n] : [])).AddIfPresent("group", Many(report.Group)))
        .AddIfPresent("compared", new JsonArray([.. report.Compared.Select(c => new JsonObject
        {
            ["quantity"] = c.Quantity, ["one"] = c.One, ["other"] = c.Other, ["first"] = c.First, ["second"] = c.Second, ["unit"] = c.Unit, ["difference"] = c.Difference,
            ["usual"] = c.Usual, ["surprise"] = c.Surprise, ["until"] = c.Until is { } until ? Json.Time(until) : null,
        })]))
        .AddIfPresent("unchecked", Many(report.Unchecked));

    private static JsonArray Many(IReadOnlyList<string> names) => [.. names.Select(n => (JsonNode?)n)];
}
