namespace Logbook;

/// <summary>A file that a person asks for: it comes out whole or not at all, and never takes the place of another.</summary>
internal static class NewFile
{
    public static int Write(Shell shell, string path, string text)
    {
        if (shell.OneOfMany)
        {
            return shell.Refuse("several lines do not fit into one file", "--line ID with --server");
        }

        var full = shell.FullPath(path);
        if (File.Exists(full) || Directory.Exists(full))
        {
            return shell.Refuse($"{full} is there already", "name a new file");
        }

        var part = full + ".part";
        using (var file = new StreamWriter(new FileStream(part, FileMode.CreateNew, FileAccess.Write)))
        {
            file.Write(text);
        }

        File.Move(part, full, overwrite: false);
        shell.Out.WriteLine($"written: {full}");
        return ExitCode.Done;
    }
}
