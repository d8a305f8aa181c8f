using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace SecondShore.Host.Tests;

/// <summary>Encrypted as on the open net: a device knows the root alone.</summary>
public class CertificateTests
{
    [Fact]
    public async Task A_device_that_knows_only_the_root_is_sent_what_stands_between()
    {
        string folder = HostUnderTest.NewFolder();
        using Authority root = Authority.Root("Ketterfold Root"), between = root.Sign("Ketterfold Between", authority: true), own = between.Sign("localhost", authority: false);
        string file = Path.Combine(folder, "chain.pem"), key = Path.Combine(folder, "key.pem");
        await File.WriteAllTextAsync(file, own.Certificate.ExportCertificatePem() + "\n" + between.Certificate.ExportCertificatePem() + "\n");
        await File.WriteAllTextAsync(key, own.Key.ExportPkcs8PrivateKeyPem());
        await using HostUnderTest host = await HostUnderTest.StartInAsync(folder, true, "--urls", "https://127.0.0.1:0", "--certificate", file, "--certificate-key", key);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(host.Address, root.Certificate));
        // Another root's devices do not take it.
        using Authority stranger = Authority.Root("Another Root");
        await Assert.ThrowsAsync<HttpRequestException>(() => AskAsync(host.Address, stranger.Certificate));
    }

    private static async Task<HttpStatusCode> AskAsync(Uri address, X509Certificate2 root)
    {
        X509ChainPolicy policy = new() { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck, DisableCertificateDownloads = true };
        policy.CustomTrustStore.Add(root);
        using SocketsHttpHandler handler = new() { SslOptions = { CertificateChainPolicy = policy, TargetHost = "localhost" } };
        using HttpClient client = new(handler);
        using HttpRequestMessage request = new(HttpMethod.Get, new Uri(address, "/health/ready"));
        request.Headers.Host = $"localhost:{address.Port}";
        return (await client.SendAsync(request)).StatusCode;
    }

    /// <summary>A certificate with its key, made for a test.</summary>
    private sealed class Authority(ECDsa key, X509Certificate2 certificate) : IDisposable
    {
        private static readonly DateTimeOffset From = TimeProvider.System.GetUtcNow().AddDays(-1), Until = From.AddDays(30);

        public ECDsa Key => key;

        public X509Certificate2 Certificate => certificate;

        public static Authority Root(string name)
        {
            ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
            return new Authority(key, Request(name, key, authority: true).CreateSelfSigned(From, Until));
        }

        public Authority Sign(string name, bool authority)
        {
            ECDsa own = ECDsa.Create(ECCurve.NamedCurves.nistP256);
            using X509Certificate2 signer = Certificate.HasPrivateKey ? new X509Certificate2(Certificate) : Certificate.CopyWithPrivateKey(Key);
            return new Authority(own, Request(name, own, authority).Create(signer, From, Until, RandomNumberGenerator.GetBytes(8)));
        }

        public void Dispose()
        {
            Key.Dispose();
            Certificate.Dispose();
        }

        private static CertificateRequest Request(string name, ECDsa key, bool authority)
        {
            CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
            request.CertificateExtensions.Add(new X509BasicConstraintsExtension(authority, false, 0, true));
            SubjectAlternativeNameBuilder names = new();
            names.AddDnsName("localhost");
            if (!authority) request.CertificateExtensions.Add(names.Build());
            return request;
        }
    }
}
