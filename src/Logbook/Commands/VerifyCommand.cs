using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Logbook.Commands;

/// <summary>The whole chain, record by record.</summary>
internal static class VerifyCommand
{
    public static Command Make(Shell shell)
    {
        var json = Options.Json();
        var command = new Command("verify", "Reads every record and checks that its hash and its place in the chain are right. With --json: ok, records, head, first_bad.") { json };
        command.SetAction(parse => OpenSite.Journal(shell, parse, store => Print(shell, parse.GetValue(json), Watched(shell, store)), whenDamaged: ExitCode.VerificationFailed));
        return command;
    }

    private static ChainCheck Watched(Shell shell, LiteDbJournal store)
    {
        using var progress = Progress.Of(shell, "verifying", store.Anchor()?.Seq ?? 0);
        return store.Verify(progress.Work);
    }

    private static int Print(Shell shell, bool json, ChainCheck answer)
    {
        if (json)
        {
            shell.Out.WriteLine(Json.Text(new JsonObject
            {
                ["ok"] = answer.Ok, ["records"] = answer.Records, ["head"] = answer.Head.Hash, ["first_bad"] = answer.FirstBad is { } bad ? JsonValue.Create(bad) : null,
            }));
        }
        else
        {
            shell.Out.WriteLine(answer.Ok
                ? string.Create(CultureInfo.InvariantCulture, $"sound: {answer.Records} records, head {answer.Head.Hash}")
                : string.Create(CultureInfo.InvariantCulture, $"NOT SOUND at record {answer.FirstBad}: {answer.Why}; the {answer.Records} records before it are sound"));
        }

        return answer.Ok ? ExitCode.Done : ExitCode.VerificationFailed;
    }
}
