using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Handover;

namespace Logbook.Commands;

/// <summary>What matters now: what can hurt, what stands out, what is due, what is open.</summary>
internal static class NowCommand
{
    public static Command Make(Shell shell)
    {
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("now", "What can hurt, what stands out, what is due and what is open. With --json, \"now\": an array of objects with what, level, point, text, at, seq.") { json, asOf };
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) => Print(shell, parse.GetValue(json), NowView.Of(desk)), asOf));
        return command;
    }

    private static int Print(Shell shell, bool json, NowView now)
    {
        if (json)
        {
            shell.Out.WriteLine(Json.Text(new JsonObject { ["now"] = new JsonArray([.. Objects(now)]) }));
            return ExitCode.Done;
        }

        var output = shell.Out;
        output.WriteLine(Say.Visible(string.Create(CultureInfo.InvariantCulture, $"{now.Site}   {now.At:ddd d MMM yyyy HH:mm}   {now.ShiftId}")));
        foreach (var line in Held(now))
        {
            output.WriteLine(line);
        }

        foreach (var hazard in now.Hazards)
        {
            output.WriteLine(Say.Visible(string.Create(CultureInfo.InvariantCulture, $"{hazard.Word.ToUpperInvariant(),-9} {hazard.Text}   since {hazard.Since:ddd HH:mm}")));
        }

        foreach (var jump in now.ClockJumps)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"CLOCK     jumped back from {jump.Before:ddd HH:mm} to {jump.After:ddd HH:mm}: look at it, then clock ack {jump.Id} --why TEXT"));
        }

        if (now.UpsetInWords is { } upset)
        {
            output.WriteLine($"UPSET     {upset}");
        }

        output.WriteLine(string.Join(' ', now.Line.Select(a => $"{a.Area} {a.Mark}")));
        output.WriteLine($"marks     {string.Join(", ", LineMarks.All.Select(m => $"{m.Mark} {m.Words}"))}");
        foreach (var line in StandsOut(now))
        {
            output.WriteLine(line);
        }

        foreach (var round in now.Instead.Concat(now.Rounds))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Word(round.State),-9} {round.Title} {round.DueAt:HH:mm}   {round.Done} of {round.Of}   closes {round.Closes:HH:mm}{(round.SaidLater.Length > 0 ? ", " : "")}{round.SaidLater}"));
        }

        foreach (var line in Orders(now))
        {
            output.WriteLine(line);
        }

        foreach (var item in now.Carried)
        {
            output.WriteLine(Say.Visible($"open      {item.Id} {item.ItemKind}, {item.On}: {item.Text}"));
        }

        foreach (var line in Foot(now))
        {
            output.WriteLine(line);
        }

        return ExitCode.Done;
    }

    /// <summary>Who holds the line, what is unfinished about the handover, and what the one before said.</summary>
    private static IEnumerable<string> Held(NowView now) =>
        [now.InCharge, .. now.Unfinished.Select(line => $"handover  {line}"), .. now.FromGiver.Select(told => $"{told.Label,-9} {told.Text}")];

    /// <summary>What stands out, then what waits for an answer.</summary>
    private static IEnumerable<string> StandsOut(NowView now) => now.StandsOut
        .Select(stands => Say.Visible(string.Create(CultureInfo.InvariantCulture, $"{Json.Word(stands.Finding.Level),-9} {stands.Finding.Point} {stands.Finding.Text}   {stands.At:ddd HH:mm}, record {stands.Seq}.{stands.Number}")))
        .Concat(now.ToAnswer.Select(answer => $"{answer.Label,-9} {answer.Text}"));

    /// <summary>What stands, then what was withdrawn while somebody who had read it has not read that.</summary>
    private static IEnumerable<string> Orders(NowView now) => now.Orders
        .Select(o => Say.Visible(string.Create(CultureInfo.InvariantCulture, $"order     {o.Id} {o.Text}   read by {o.Seen.Count}")))
        .Concat(now.Withdrawn.Select(o => Say.Visible(string.Create(CultureInfo.InvariantCulture, $"order     {o.Id} WITHDRAWN {o.Withdrawn!.At:ddd HH:mm}: {o.Withdrawn.Why}; was: {o.Text}   not read yet by {string.Join(", ", o.Seen.Keys.Where(o.EndIsNewTo).Order(StringComparer.Ordinal))}"))));

    private static IEnumerable<string> Foot(NowView now)
    {
        if (now.Server is { } server)
        {
            yield return Say.Visible($"server    {server.Text}");
        }

        if (now.FilesDiffer)
        {
            yield return "The site's files differ from those in force: logbook check, then logbook adopt.";
        }
    }

    private static IEnumerable<JsonNode> Objects(NowView now)
    {
        yield return Row("in-charge", null, now.InCharge, now.At, null, null);
        foreach (var line in now.Unfinished)
        {
            yield return Row("handover", null, line, now.At, null, null);
        }

        foreach (var told in now.FromGiver)
        {
            yield return Row("told", null, $"{told.Label}: {told.Text}", now.At, null, null);
        }

        foreach (var h in now.Hazards)
        {
            yield return Row("hazard", "urgent", $"{h.Word}: {h.Text}", h.Since, h.Seq, null);
        }

        foreach (var f in now.StandsOut)
        {
            yield return Row("finding", Json.Word(f.Finding.Level), f.Finding.Text, f.At, f.Seq, f.Finding.Point);
        }

        foreach (var answer in now.ToAnswer)
        {
            yield return Row("answer", null, answer.Text, now.At, null, null);
        }

        foreach (var r in now.Instead.Concat(now.Rounds))
        {
            yield return Row("round-" + Word(r.State), null, string.Create(CultureInfo.InvariantCulture, $"{r.Title}, {r.Done} of {r.Of}{(r.SaidLater.Length > 0 ? ", " : "")}{r.SaidLater}"), r.DueAt, null, null);
        }

        if (now.Server is { } server)
        {
            yield return Row("server", server.Watch ? "watch" : null, server.Text, now.At, null, null);
        }

        foreach (var c in now.Carried)
        {
            yield return Row("open", null, $"{c.ItemKind}, {c.On}: {c.Text}", c.Since, c.Id, null);
        }
    }

    private static JsonObject Row(string what, string? level, string text, DateTimeOffset at, long? seq, string? point) => new JsonObject { ["what"] = what }
        .AddIfPresent("level", level).AddIfPresent("point", point).AddIfPresent("text", text).AddIfPresent("at", at).AddIfPresent("seq", seq);

    internal static string Word(CheckState state) => state switch
    {
        CheckState.NotTaken => "not-taken",
        CheckState.NotApplicable => "not-applicable",
        _ => state.ToString().ToLowerInvariant(),
    };
}
