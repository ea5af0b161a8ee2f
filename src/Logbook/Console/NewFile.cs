using Logbook.Plant;
using Logbook.Storage.LiteDb;

namespace Logbook;

/// <summary>A file that a person asks for: it comes out whole or not at all, and never takes the place of another.</summary>
internal static class NewFile
{
    public static int Write(Shell shell, string path, string text) => Write(shell, path, file =>
    {
        file.Write(text);
        return ExitCode.Done;
    });

    /// <param name="fill">Writes the content and returns the exit code. What it throws leaves no file.</param>
    public static int Write(Shell shell, string path, Func<TextWriter, int> fill)
    {
        if (shell.OneOfMany)
        {
            return shell.Refuse("several lines do not fit into one file", "--line ID with --server");
        }

        var full = shell.FullPath(path);
        if (WhyNot(full) is { } mistake)
        {
            return shell.Refuse(mistake);
        }

        using var file = new WholeFile(full);
        var code = fill(file.Text);
        file.Keep();
        shell.Out.WriteLine($"written: {full}");
        return code;
    }

    /// <summary>A journal's folder holds its own files and nothing else; null for a path elsewhere.</summary>
    public static Mistake? AmongJournals(string full) =>
        LiteDbJournal.Holds(full) ? Mistake.Typed($"{full} would lie among the journal's own files", "a place outside the journal's folder") : null;

    private static Mistake? WhyNot(string full) =>
        File.Exists(full) || Directory.Exists(full) ? Mistake.Typed($"{full} is there already", "name a new file")
        : AmongJournals(full) is { } among ? among
        : File.Exists(WholeFile.Draft(full)) ? Mistake.Typed($"{WholeFile.Draft(full)} is there already: another is writing it, or was stopped", "delete it, or name a new file")
        : null;
}
