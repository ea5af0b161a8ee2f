using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>A server whose certificate is made out to localhost: what is believed of it, and what is not.</summary>
[Collection(OnAServer.Name)]
public sealed class TlsTests(ClusterIfThere there) : IDisposable
{
    private readonly string _authority = Path.GetTempFileName();

    public void Dispose() => File.Delete(_authority);

    [ServerFact]
    public void Records_go_to_a_server_that_a_trusted_authority_vouches_for_and_to_no_other()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var certificate = Certificate(key);
        File.WriteAllText(_authority, certificate.ExportCertificatePem());
        there.Cluster.Secure(certificate.ExportCertificatePem(), key.ExportPkcs8PrivateKeyPem());
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(5);

        foreach (var wrong in (string[])["Host=localhost;SSL Mode=VerifyFull", $"Host=127.0.0.1;SSL Mode=VerifyFull;Root Certificate={_authority}"])
        {
            var refused = Assert.Throws<JournalException>(() => Forward(mill, line, wrong));

            Assert.Equal(JournalTrouble.Denied, refused.Trouble);
            Assert.Contains("TLS does not vouch for the server", refused.Message, StringComparison.Ordinal);
            Assert.Equal(Head.Empty, mill.Journal().Head);
        }

        Assert.Equal(Agreement.Whole, Forward(mill, line, $"Host=localhost;SSL Mode=VerifyFull;Root Certificate={_authority}").Agreement);
        mill.MustHold(line);
    }

    private static ForwardReport Forward(Mill mill, IJournalStore line, string how)
    {
        var text = $"{how};Port={mill.Cluster.Port};Username=fw_{mill.Database};Database={mill.Database};Pooling=false";
        using var server = new Server(ServerAddress.Of(text, "test").Value!);
        return new Forwarder(line, server, mill.Note(Drafts.Line), mill.Clock).Run(LongWork.Unwatched);
    }

    private static X509Certificate2 Certificate(ECDsa key)
    {
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: false, 0, critical: true));
        var now = TimeProvider.System.GetUtcNow();
        return request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
    }
}
