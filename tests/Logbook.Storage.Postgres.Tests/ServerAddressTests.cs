namespace Logbook.Storage.Postgres.Tests;

public sealed class ServerAddressTests : IDisposable
{
    private readonly string _file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());

    public void Dispose() => File.Delete(_file);

    [Theory]
    [InlineData("Host=db.mill.example;Database=log;Username=fw;Password=s3cret", "VerifyFull")]
    [InlineData("Host=db.mill.example;Database=log;SSL Mode=VerifyCA", "VerifyCA")]
    [InlineData("Host=db.mill.example;Database=log;SSL Mode=Require", "Require")]
    [InlineData("Host=localhost;Database=log", "Prefer")]
    [InlineData("Host=127.0.0.1;Database=log;SSL Mode=Disable", "Disable")]
    [InlineData("Host=/var/run/postgresql;Database=log;SSL Mode=Disable", "Disable")]
    public void TLS_is_asked_for_unless_the_server_is_on_this_machine(string text, string mode)
    {
        var address = ServerAddress.Of(text, "LOGBOOK_SERVER");

        Assert.True(address.Ok, string.Join("; ", address.Mistakes));
        Assert.Equal(mode, address.Value!.Builder.SslMode.ToString());
        Assert.DoesNotContain("s3cret", address.Value.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Host=db.mill.example;Database=log;SSL Mode=Disable;Password=s3cret")]
    [InlineData("Host=db.mill.example;Database=log;SSL Mode=Prefer;Password=s3cret")]
    [InlineData("Host=localhost,db.mill.example;Database=log;SSL Mode=Allow;Password=s3cret")]
    [InlineData("Host=localhost;Password=s3cret")]
    [InlineData("Database=log;Password=s3cret")]
    [InlineData("Host=db;Database=log;Password=s3;s3cret word=1")]
    [InlineData("Host=db;Database=log;Port=s3cret")]
    [InlineData("s3cret")]
    public void What_cannot_be_used_is_one_line_that_gives_nothing_away(string text)
    {
        var mistake = Assert.Single(ServerAddress.Of(text, "LOGBOOK_SERVER").Mistakes).ToString();

        Assert.StartsWith("LOGBOOK_SERVER ", mistake, StringComparison.Ordinal);
        Assert.DoesNotContain("s3", mistake, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', mistake);
    }

    [Fact]
    public void A_file_that_others_can_read_is_no_place_for_a_secret()
    {
        if (OperatingSystem.IsWindows())
            return;
        File.WriteAllText(_file, "Host=localhost;Database=log\n");
        File.SetUnixFileMode(_file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
        Assert.Contains("chmod 600", Assert.Single(ServerAddress.OfFile(_file).Mistakes).ToString(), StringComparison.Ordinal);

        File.SetUnixFileMode(_file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.True(ServerAddress.OfFile(_file).Ok);
    }
}
