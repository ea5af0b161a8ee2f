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

    public static int Print(Shell shell, bool json, Written written, string done, Site? site = null)
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
        Shown.Results(shell.Out, site, results);
        Shown.Findings(shell.Out, [.. findings.New()]);
        return ExitCode.Done;
    }
}
