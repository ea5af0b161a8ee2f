using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Storage.LiteDb;

namespace Logbook.Commands;

/// <summary>A second journal with the same records: backup while others write, restore where there is none.</summary>
internal static class BackupCommands
{
    private static readonly string[] SiteFileNames = [SiteFiles.SiteToml, SiteFiles.PointsCsv, SiteFiles.CautionsToml];

    public static Command Backup(Shell shell)
    {
        var into = new Argument<string>("DIR") { Description = "A folder that is not there yet, or is empty." };
        var json = Options.Json();
        var command = new Command("backup", "Copies the journal while others may write, reads the copy again, and puts the files in force beside it: DIR is a site folder of its own. PINs and drafts are not copied. With --json: records, head, to.") { into, json };
        command.SetAction(parse => OpenSite.Journal(shell, parse, store =>
        {
            var folder = shell.FullPath(parse.GetValue(into)!);
            if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
            {
                return shell.Refuse($"{folder} is not empty", "a new folder for each backup");
            }

            if (NewFile.AmongJournals(folder) is { } among)
            {
                return shell.Refuse(among);
            }

            var code = ExitCode.Stopped;
            try
            {
                return code = Copied(shell, parse, json, "backup", folder, store.Head.Seq, store.CopyTo);
            }
            finally
            {
                if (code != ExitCode.Done && Directory.Exists(folder))
                {
                    Directory.Delete(folder, recursive: true);
                }
            }
        }, whenDamaged: ExitCode.Store));
        return command;
    }

    public static Command Restore(Shell shell)
    {
        var from = new Argument<string>("DIR|F.jsonl") { Description = "A backup, or the jsonl of an export." };
        var json = Options.Json();
        var command = new Command("restore", "Makes the journal of this site out of a backup or an export, after it was verified; the site must have no record yet. Files of the site that are missing are written as they were in force. With --json: records, head, to.") { from, json };
        command.SetAction(parse => OpenSite.Journal(shell, parse, store =>
        {
            if (store.Head.Seq > 0)
            {
                shell.Error.WriteLine("this site has a journal already; a journal is restored into an empty folder only");
                return ExitCode.RefusedByRule;
            }

            var source = shell.FullPath(parse.GetValue(from)!);
            return Directory.Exists(source) ? FromFolder(shell, parse, json, source)
                : File.Exists(source) ? Copied(shell, parse, json, "restored", OpenSite.Folder(shell, parse), 0, (folder, terminal, wait, work) => JournalCopy.Make(Lines(source), noted: null, folder, terminal, wait, work))
                : shell.Refuse($"{source}: there is no such file or folder");
        }, whenDamaged: ExitCode.Store));
        return command;
    }

    private static int FromFolder(Shell shell, ParseResult parse, Option<bool> json, string source)
    {
        using var backup = new LiteDbJournal(source, shell.Terminal, shell.Clock);
        return backup.Head.Seq == 0
            ? shell.Refuse($"{source} holds no journal", "a folder that 'logbook backup' made, or a site folder")
            : Copied(shell, parse, json, "restored", OpenSite.Folder(shell, parse), backup.Head.Seq, backup.CopyTo);
    }

    private static int Copied(Shell shell, ParseResult parse, Option<bool> json, string done, string folder, long records, Func<string, string, TimeSpan, LongWork, ChainCheck> copy)
    {
        var check = Watched(shell, parse, folder, records, copy);
        if (!check.Ok || check.Records == 0)
        {
            shell.Error.WriteLine(Say.Visible(check.Ok ? "there is no record to copy" : string.Create(CultureInfo.InvariantCulture, $"not sound at record {check.FirstBad}: {check.Why}; nothing was made")));
            return ExitCode.VerificationFailed;
        }

        PutFiles(shell, folder);
        shell.Out.WriteLine(parse.GetValue(json)
            ? Json.Text(new JsonObject { ["records"] = check.Records, ["head"] = check.Head.Hash, ["to"] = folder })
            : string.Create(CultureInfo.InvariantCulture, $"{done}, read again and sound: {check.Records} records, head {check.Head.Hash}, in {folder}"));
        return ExitCode.Done;
    }

    private static ChainCheck Watched(Shell shell, ParseResult parse, string folder, long records, Func<string, string, TimeSpan, LongWork, ChainCheck> copy)
    {
        using var progress = Progress.Of(shell, "copying", records);
        return copy(folder, shell.Terminal, OpenSite.Wait(parse), progress.Work);
    }

    private static IEnumerable<ReadOnlyMemory<byte>> Lines(string path) => File.ReadLines(path).Where(line => line.Length > 0).Select(line => new ReadOnlyMemory<byte>(Encoding.UTF8.GetBytes(line)));

    /// <summary>The files in force, where the folder has none of that name.</summary>
    private static void PutFiles(Shell shell, string folder)
    {
        using var store = new LiteDbJournal(folder, shell.Terminal, shell.Clock);
        var files = Replay.Forward(store, State.Empty).Files?.Texts;
        foreach (var name in SiteFileNames.Where(name => files?.ContainsKey(name) == true && !File.Exists(Path.Combine(folder, name))))
        {
            File.WriteAllText(Path.Combine(folder, name), files![name]);
        }
    }
}
