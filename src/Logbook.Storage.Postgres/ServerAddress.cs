using System.Net;
using System.Security.Cryptography;
using System.Text;
using Logbook.Plant;
using Npgsql;

namespace Logbook.Storage.Postgres;

/// <summary>Where the server is and who asks. What is secret in it is never shown: no message quotes the text that it was read from.</summary>
public sealed class ServerAddress
{
    private const string Accepted = "Host=...;Database=...;Username=... with ';' between them; a value that holds ';' stands in quotes";

    private ServerAddress(NpgsqlConnectionStringBuilder builder) => Builder = builder;

    internal NpgsqlConnectionStringBuilder Builder { get; }

    /// <summary>Reads a connection string.</summary>
    /// <param name="source">Where it was found, for the mistake: <c>LOGBOOK_SERVER</c> or the file's name.</param>
    public static Parsed<ServerAddress> Of(string text, string source)
    {
        NpgsqlConnectionStringBuilder builder;
        try
        {
            builder = new(text.Trim());
        }
        catch (Exception unreadable) when (unreadable is ArgumentException or FormatException or InvalidCastException or OverflowException)
        {
            return Wrong($"{source} does not hold a connection string that can be read"); // the message could quote a part of the password
        }

        if (string.IsNullOrWhiteSpace(builder.Host) || string.IsNullOrWhiteSpace(builder.Database))
            return Wrong($"{source} does not say which server and which database");
        if (!IsHere(builder.Host) && !Secured(builder))
            return Wrong($"{source} asks for a connection to {builder.Host} without TLS (SSL Mode={builder.SslMode}): that is for a server on this machine alone", "SSL Mode=VerifyFull, VerifyCA or Require");
        builder.IncludeErrorDetail = false;
        builder.PersistSecurityInfo = false;
        builder.ApplicationName = "logbook";
        builder.Timeout = builder.ShouldSerialize("Timeout") ? builder.Timeout : 5;
        builder.Enlist = false;
        builder.MaxAutoPrepare = 32;
        builder.AutoPrepareMinUsages = 2;
        return new(new(builder), []);
    }

    /// <summary>Reads the connection string of a file that its owner alone can read.</summary>
    public static Parsed<ServerAddress> OfFile(string path) => OnDisk.Try(
        () => !OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & (UnixFileMode.GroupRead | UnixFileMode.OtherRead)) != UnixFileMode.None
            ? Wrong($"{path} holds a secret and can be read by others", $"chmod 600 {path}")
            : Of(File.ReadAllText(path), path),
        out var refused) ?? Wrong($"{path} cannot be read: {refused!.Message}", "a file with one connection string");

    /// <summary>Host, database and role: what may be shown.</summary>
    public override string ToString() => $"{Builder.Host}{(Builder.Port == NpgsqlConnection.DefaultPort ? "" : $":{Builder.Port}")}, database {Builder.Database}";

    /// <summary>Tells one server from another, the same whoever asks: part of a file's name, so it shows nothing.</summary>
    internal string Mark => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(ToString().ToUpperInvariant())))[..12];

    private static Parsed<ServerAddress> Wrong(string what, string accepted = Accepted) => new(null, [Mistake.Typed(what, accepted)]);

    /// <summary>Not said means the safest there is; a site may choose less, but never none.</summary>
    private static bool Secured(NpgsqlConnectionStringBuilder builder)
    {
        if (!builder.ShouldSerialize("SSL Mode"))
            builder.SslMode = SslMode.VerifyFull;
        return builder.SslMode is SslMode.VerifyFull or SslMode.VerifyCA or SslMode.Require;
    }

    private static bool IsHere(string hosts) => hosts.Split(',').All(part =>
    {
        var host = part.Trim();
        return host.StartsWith('/') || host.StartsWith('@') || host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(WithoutPort(host), out var address) && IPAddress.IsLoopback(address));
    });

    private static string WithoutPort(string host) => host.Count(c => c == ':') == 1 ? host[..host.IndexOf(':', StringComparison.Ordinal)] : host;
}
