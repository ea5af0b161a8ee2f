using System.Diagnostics;
using System.Globalization;

namespace Logbook.Tests;

/// <summary>The built program in a process of its own, as a shell starts it.</summary>
internal sealed class RealProgram : IDisposable
{
    private readonly Process _process;
    private readonly Task<string> _out;
    private readonly Task<string> _error;

    private RealProgram(ProcessStartInfo start)
    {
        _process = Process.Start(start)!;
        _out = _process.StandardOutput.ReadToEndAsync();
        _error = _process.StandardError.ReadToEndAsync();
    }

    public bool HasEnded => _process.HasExited;

    /// <summary>Starts it on a site, or on none when the arguments name it.</summary>
    public static RealProgram Start(string site, params string[] args) => new(Prepared("dotnet", site, [Dll, .. args]));

    /// <summary>Starts it with its error stream on a terminal, as a person at one sees it.</summary>
    public static RealProgram StartAt(PseudoTerminal terminal, string site, params string[] args) =>
        new(Prepared("/bin/sh", site, ["-c", $"exec dotnet \"$@\" 2>{terminal.Name}", "sh", Dll, .. args]));

    /// <summary>Starts it and waits for its end.</summary>
    public static (int Code, string Out, string Error) Run(string site, params string[] args)
    {
        using var program = Start(site, args);
        return program.WaitForEnd();
    }

    public (int Code, string Out, string Error) WaitForEnd()
    {
        _process.WaitForExit();
        return (_process.ExitCode, _out.Result, _error.Result);
    }

    /// <summary>SIGKILL: it cannot do anything more.</summary>
    public void Kill() => _process.Kill();

    /// <summary>What Ctrl+C sends.</summary>
    public void Interrupt()
    {
        using var kill = Process.Start("kill", ["-INT", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
    }

    private static string Dll => Path.Combine(AppContext.BaseDirectory, "logbook.dll");

    private static ProcessStartInfo Prepared(string program, string site, IEnumerable<string> args) => new(program, args)
    {
        UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = site, Environment = { ["LOGBOOK_SITE"] = site },
    };
}
