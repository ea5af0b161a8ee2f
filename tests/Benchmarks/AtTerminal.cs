using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Benchmarks;

/// <summary>A program on a terminal of 80 by 24 (made by <c>script</c> of util-linux): what it paints is read, keys are sent.</summary>
internal sealed class AtTerminal : IDisposable
{
    private readonly Process _script;
    private readonly StringBuilder _painted = new();
    private readonly Lock _turn = new();
    private long _last = Stopwatch.GetTimestamp();

    public AtTerminal(string program, string site)
    {
        Begun = Stopwatch.GetTimestamp();
        _script = Process.Start(new ProcessStartInfo("script", ["-qfc", $"stty cols 80 rows 24; exec {program}", "/dev/null"])
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false, Environment = { ["LOGBOOK_SITE"] = site, ["TERM"] = "xterm-256color" },
        })!;
        _ = Task.Run(Read);
    }

    public long Begun { get; }

    /// <summary>All that was painted, as it came.</summary>
    public string All
    {
        get
        {
            lock (_turn)
            {
                return _painted.ToString();
            }
        }
    }

    /// <summary>Waits until the words were painted, and says when that was.</summary>
    public long Painted(string words)
    {
        while (true)
        {
            lock (_turn)
            {
                if (_painted.ToString().Contains(words, StringComparison.Ordinal))
                {
                    return _last;
                }
            }

            if (_script.HasExited || Stopwatch.GetElapsedTime(Begun).TotalMinutes > 10)
            {
                throw new InvalidOperationException($"'{words}' was not painted");
            }

            Thread.Sleep(1);
        }
    }

    /// <summary>Milliseconds from a key to the first thing painted after it.</summary>
    public double KeyToPaint(string key)
    {
        lock (_turn)
        {
            _painted.Clear();
        }

        var sent = Stopwatch.GetTimestamp();
        Send(key);
        while (true)
        {
            lock (_turn)
            {
                if (_painted.Length > 0)
                {
                    return Stopwatch.GetElapsedTime(sent, _last).TotalMilliseconds;
                }
            }

            Thread.Sleep(0);
        }
    }

    public void Send(string keys)
    {
        _script.StandardInput.Write(keys);
        _script.StandardInput.Flush();
    }

    /// <summary>Forgets what was painted.</summary>
    public void Forget()
    {
        lock (_turn)
        {
            _painted.Clear();
        }
    }

    /// <summary>Resident memory of the program, MB of 1024 x 1024 bytes.</summary>
    public double Memory()
    {
        var child = File.ReadAllText($"/proc/{_script.Id}/task/{_script.Id}/children").Split(' ', StringSplitOptions.RemoveEmptyEntries)[0];
        var line = File.ReadLines($"/proc/{child}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal));
        return double.Parse(string.Concat(line.Where(char.IsAsciiDigit)), CultureInfo.InvariantCulture) / 1024;
    }

    public void Dispose()
    {
        _script.Kill(entireProcessTree: true);
        _script.WaitForExit();
        _script.Dispose();
    }

    private void Read()
    {
        var buffer = new char[65536];
        int count;
        while ((count = _script.StandardOutput.Read(buffer, 0, buffer.Length)) > 0)
        {
            lock (_turn)
            {
                _last = Stopwatch.GetTimestamp();
                _painted.Append(buffer, 0, count);
            }
        }
    }
}
