using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Logbook.Tests;

/// <summary>
/// README's recipe, as it stands there, on an export. It shares nothing with the program: SHA-256 is that of Python's
/// hashlib and of the core utilities' sha256sum (FIPS 180-4).
/// </summary>
public sealed partial class AnExportVerifiesWithoutTheProgram : IDisposable
{
    private readonly Cli _cli = new();
    private readonly string _export;
    private readonly string _head;

    public AnExportVerifiesWithoutTheProgram()
    {
        for (var i = 0; i < 5; i++)
        {
            _cli.Run("record", $"SL-F1=30{i}", "--remark", "flow by hand, 21 °C in the shade", "--by", "op1");
        }

        _cli.Run("export", "--format", "jsonl", "--out", "log.jsonl");
        _export = Path.Combine(_cli.Folder, "log.jsonl");
        _head = _cli.Run("verify", "--json").Json.GetProperty("head").GetString()!;
        File.WriteAllText(Path.Combine(_cli.Folder, "chain.py"), Recipe("python"));
    }

    public void Dispose() => _cli.Dispose();

    [NeedsTool("sha256sum")]
    public void The_last_lines_hash_is_the_head_that_the_program_says() =>
        Assert.StartsWith(_head + " ", Ran("sh", "-c", Recipe("sh")).Out, StringComparison.Ordinal);

    [NeedsTool("python3")]
    public void The_recipe_says_what_the_program_says()
    {
        var records = _cli.Records;

        Assert.Equal($"sound: {records} records, head {_head}", Check(_head).Out.Trim());
        Assert.Equal(0, Check(_head[..12]).Code);
        var later = _cli.Run("record", "SL-F1=299", "--by", "op1", "--json").Json.GetProperty("head").GetString()!;
        Assert.NotEqual(0, Check(later).Code); // that record is not in the export
    }

    [NeedsTool("python3")]
    public void A_changed_byte_is_found_wherever_it_is()
    {
        var sound = File.ReadAllBytes(_export);
        var last = Array.LastIndexOf(sound, (byte)'\n', sound.Length - 2) + 1;
        foreach (var place in (int[])[0, 40, sound.Length / 3, sound.Length / 2, last - 1, last, last + 60, sound.Length - 2, sound.Length - 1])
        {
            var changed = sound.ToArray();
            changed[place] ^= 1;
            File.WriteAllBytes(_export, changed);

            Assert.True(Check(_head).Code != 0, $"the byte at {place} was changed and not found");
        }
    }

    [NeedsTool("python3")]
    public void A_missing_record_is_found()
    {
        var lines = File.ReadAllLines(_export);
        File.WriteAllLines(_export, lines[..^1]);
        Assert.NotEqual(0, Check(_head).Code);
        File.WriteAllLines(_export, [.. lines[..2], .. lines[3..]]);
        Assert.NotEqual(0, Check(_head).Code);
        File.WriteAllLines(_export, lines);
        Assert.Equal(0, Check(_head).Code);
    }

    private Answer Check(string head) => Ran("python3", "chain.py", "log.jsonl", head);

    private Answer Ran(string tool, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(tool, arguments)
        {
            WorkingDirectory = _cli.Folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true,
        })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Answer(process.ExitCode, output, error.Result);
    }

    /// <summary>The block of this language in README's chapter on the journal.</summary>
    private static string Recipe(string language)
    {
        var readme = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md"));
        var chapter = readme[readme.IndexOf("## The journal", StringComparison.Ordinal)..];
        return Block().Matches(chapter).First(b => b.Groups["language"].Value == language).Groups["code"].Value;
    }

    [GeneratedRegex(@"^```(?<language>\w+)\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Block();
}

/// <summary>A test that needs a common tool of the system; where it is absent the test says so and is skipped.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NeedsToolAttribute : FactAttribute
{
    public NeedsToolAttribute(string tool)
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, tool)));
        if (!found)
        {
            Skip = $"{tool} is not installed here";
        }
    }
}
