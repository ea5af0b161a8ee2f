using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook;

/// <summary>What a writing command answers: the record's place in the chain, and what was computed and noticed.</summary>
internal static class WrittenOut
{
    /// <summary>The answer to a step of the handover: what a rule refuses is one line and its own exit code.</summary>
    public static int Print(Shell shell, bool json, Handed handed, string done)
    {
        if (handed.Refused is not { } refused)
        {
            var code = Print(shell, json, new Written(handed.Record, handed.Mistakes), done);
            if (handed.Beside is { } beside)
            {
                shell.Error.WriteLine(Say.Visible($"  {beside}"));
            }

            return code;
        }

        shell.Error.WriteLine(Say.Visible(refused));
        return ExitCode.RefusedByRule;
    }

    /// <param name="whole">Every result, not the few that ask to be looked at.</param>
    public static int Print(Shell shell, bool json, Written written, string done, Site? site = null, bool whole = false)
    {
        if (written.Record is not { } record)
        {
            return shell.Refuse(written.Mistakes);
        }

        var (results, findings) = record.Body switch
        {
            Entry entry => (entry.Results, entry.Findings),
            Correction correction => (correction.Results, correction.Findings),
            _ => ([], []),
        };
        if (json)
        {
            var answer = new JsonObject { ["seq"] = record.Seq, ["head"] = record.Hash };
            if (record.Body is Entry or Correction)
            {
                answer["results"] = new JsonArray([.. results.Select(Json.Of)]);
                answer["findings"] = new JsonArray([.. findings.Select(Json.Of)]);
            }

            shell.Out.WriteLine(Json.Text(answer));
            return ExitCode.Done;
        }

        shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{done}: record {record.Seq}, head {record.Hash[..12]}"));
        Shown.Findings(shell.Out, site is null ? [.. findings.New()] : SaidAtOnce.Of(new Links(site), findings));
        var told = whole || site is null ? results : Shown.ToLookAt(site, results, findings);
        Shown.Results(shell.Out, site, told);
        if (told.Count < results.Count)
        {
            shell.Out.WriteLine($"  {Say.Count(results.Count - told.Count, "more result")}, nothing was found of them: --results prints all");
        }

        return ExitCode.Done;
    }
}
