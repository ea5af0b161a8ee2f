using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>A PostgreSQL of its own for these tests, in a temporary folder, gone afterwards.</summary>
public sealed class Cluster : IDisposable
{
    private static readonly Lazy<string?> Programs = new(Find);
    private static int _databases;

    private readonly string _folder = Directory.CreateTempSubdirectory("pg-").FullName;

    private readonly string _settings;

    /// <param name="durable">False for tests: a killed server loses nothing of what the system has taken, and no disk is waited for.</param>
    public Cluster(bool durable = false)
    {
        _settings = durable ? "" : " -c fsync=off -c full_page_writes=off";
        if (AsRoot)
            Call("chown", "postgres", _folder);
        Run("initdb", "-D", Data, "-U", "lab", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8");
        Start();
    }

    /// <summary>Why there can be no server here; null when there can.</summary>
    public static string? WhyNot => Programs.Value is null
        ? "PostgreSQL is not installed here: neither on PATH nor in /usr/lib/postgresql (Debian: apt-get install postgresql)"
        : AsRoot && !File.ReadAllText("/etc/passwd").Contains("\npostgres:", StringComparison.Ordinal) ? "PostgreSQL does not run as root, and there is no user postgres" : null;

    public int Port { get; private set; }

    private static bool AsRoot => string.Equals(Environment.UserName, "root", StringComparison.Ordinal);

    private string Data => Path.Combine(_folder, "data");

    public void Start()
    {
        Port = FreePort();
        Run("pg_ctl", "-D", Data, "-w", "-t", "60", "-l", Path.Combine(_folder, "log"), "-o",
            string.Create(CultureInfo.InvariantCulture, $"-p {Port} -k {_folder} -c listen_addresses=127.0.0.1 -c max_connections=60{_settings}"), "start");
    }

    /// <summary>Ends it as a power cut would: nothing is written any more, the next start recovers.</summary>
    public void Kill() => Run("pg_ctl", "-D", Data, "-m", "immediate", "stop");

    /// <param name="port">A proxy's, whose every connection is to be a new one.</param>
    public string ConnectionString(string database, string role, int? port = null) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port ?? Port};Username={role};Database={database};SSL Mode=Disable;Pooling={port is null};Timeout=60");

    public void Execute(string database, string sql)
    {
        using var connection = new NpgsqlConnection(ConnectionString(database, "lab"));
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        command.ExecuteNonQuery();
    }

    public object? Scalar(string database, string sql)
    {
        using var connection = new NpgsqlConnection(ConnectionString(database, "lab"));
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection);
        return command.ExecuteScalar();
    }

    /// <summary>A fresh database; its name is new in this process.</summary>
    public string NewDatabase(string more = "")
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"mill{Interlocked.Increment(ref _databases)}");
        Execute("postgres", $"create database {name} {more}");
        return name;
    }

    /// <summary>A folder that the server may write in.</summary>
    public string NewFolder(string name)
    {
        var folder = Directory.CreateDirectory(Path.Combine(_folder, name)).FullName;
        if (AsRoot)
            Call("chown", "postgres", folder);
        return folder;
    }

    /// <summary>Lets it speak TLS from now on, to who asks for it.</summary>
    public void Secure(string certificate, string key)
    {
        var folder = NewFolder("tls");
        foreach (var (name, text) in ((string, string)[])[("server.crt", certificate), ("server.key", key)])
        {
            var file = Path.Combine(folder, name);
            File.WriteAllText(file, text);
            Call("chmod", "400", file);
            if (AsRoot)
                Call("chown", "postgres", file);
        }

        Execute("postgres", $"alter system set ssl_cert_file = '{Path.Combine(folder, "server.crt")}'");
        Execute("postgres", $"alter system set ssl_key_file = '{Path.Combine(folder, "server.key")}'");
        Execute("postgres", "alter system set ssl = on");
        Execute("postgres", "select pg_reload_conf()");
        if (!SpinWait.SpinUntil(() => Scalar("postgres", "show ssl") is "on", TimeSpan.FromSeconds(60)))
            throw new InvalidOperationException("the server does not take its certificate");
    }

    public static bool Call(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0;
    }

    public void Dispose()
    {
        Run("pg_ctl", "-D", Data, "-m", "immediate", "stop");
        Directory.Delete(_folder, recursive: true);
    }

    private static string? Find()
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var installed = Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").OrderDescending(StringComparer.Ordinal).Select(v => Path.Combine(v, "bin"))
            : [];
        return installed.Concat(folders).FirstOrDefault(f => IsThere(Path.Combine(f, "initdb")) && IsThere(Path.Combine(f, "pg_ctl")));
    }

    /// <summary>A link that leads nowhere is left behind where PostgreSQL was taken away.</summary>
    private static bool IsThere(string path) => File.Exists(path) && File.ResolveLinkTarget(path, returnFinalTarget: true)?.Exists != false;

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private void Run(string program, params string[] arguments)
    {
        var path = Path.Combine(Programs.Value!, program);
        var start = AsRoot ? new ProcessStartInfo("runuser", ["-u", "postgres", "--", path, .. arguments]) : new ProcessStartInfo(path, arguments);
        start.WorkingDirectory = _folder;
        // Into a file: a server that was started would keep a pipe open for as long as it runs.
        var log = Path.Combine(_folder, program + ".out");
        start = new ProcessStartInfo("/bin/sh", ["-c", $"exec \"$@\" >'{log}' 2>&1", "sh", start.FileName, .. start.ArgumentList]) { WorkingDirectory = _folder };
        using var process = Process.Start(start)!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {process.ExitCode}: {File.ReadAllText(log)}");
    }
}

/// <summary>One server for all tests that need one, one after the other: some of them kill it.</summary>
[CollectionDefinition(Name)]
public sealed class OnAServer : ICollectionFixture<ClusterIfThere>
{
    public const string Name = "server";
}

/// <summary>Started by the first test that asks for it.</summary>
public sealed class ClusterIfThere : IDisposable
{
    private readonly Lazy<Cluster> _cluster = new(() => new Cluster());

    public Cluster Cluster => _cluster.Value;

    public void Dispose()
    {
        if (_cluster.IsValueCreated)
            _cluster.Value.Dispose();
    }
}

/// <summary>A fact about a real server; skipped, with the reason, where there can be none.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ServerFactAttribute : FactAttribute
{
    public ServerFactAttribute() => Skip = Cluster.WhyNot!;
}

/// <summary>As <see cref="ServerFactAttribute"/>, where a small disk can be mounted.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class SmallDiskFactAttribute : FactAttribute
{
    private static readonly Lazy<bool> CanMount = new(() =>
    {
        var folder = Directory.CreateTempSubdirectory("mount-").FullName;
        var mounted = Cluster.Call("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", folder) && Cluster.Call("umount", folder);
        Directory.Delete(folder);
        return mounted;
    });

    public SmallDiskFactAttribute() => Skip = Cluster.WhyNot ?? (CanMount.Value ? null! : "no small disk can be mounted here to fill up (it needs root)");
}
