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
        var head = Options.Text("--head", "A head that a printed note carries: the journal must contain the record it belongs to.", "HASH");
        var command = new Command("verify", "Reads every record and checks that its hash and its place in the chain are right. With --json: ok, records, head, first_bad.") { json, head };
        command.SetAction(parse => OpenSite.Journal(shell, parse, store =>
        {
            var code = Print(shell, parse.GetValue(json), Watched(shell, store));
            return code == ExitCode.Done && parse.GetValue(head) is { } noted ? Contains(shell, store, noted) : code;
        }, whenDamaged: ExitCode.VerificationFailed));
        return command;
    }

    /// <summary>Whether the journal that a note was drawn from lives on, unaltered, in this one.</summary>
    private static int Contains(Shell shell, LiteDbJournal store, string noted)
    {
        var hash = string.Concat(noted.Where(c => !char.IsWhiteSpace(c)));
        if (hash.Length < 12)
        {
            return shell.Refuse($"--head {noted}: too short to be sure", "12 hexadecimal digits or more");
        }

        var record = store.Read().FirstOrDefault(r => r.Hash.StartsWith(hash, StringComparison.OrdinalIgnoreCase));
        if (record is null)
        {
            shell.Error.WriteLine($"no record has the head {noted}: this is not the journal that the note was drawn from, or its end is lost");
            return ExitCode.VerificationFailed;
        }

        shell.Error.WriteLine($"the head given is that of record {record.Seq}: all up to it is as it was when the note was drawn");
        return ExitCode.Done;
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
