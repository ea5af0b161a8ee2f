using System.Security.Cryptography;
using System.Text;

namespace Logbook.Handover;

/// <summary>What is kept of a PIN: enough to recognise it, not to read it.</summary>
/// <param name="Rounds">The cost at which it was made, so that it can rise later.</param>
public sealed record PinHash(int Rounds, byte[] Salt, byte[] Hash)
{
    /// <summary>PBKDF2-HMAC-SHA256 rounds: OWASP Password Storage Cheat Sheet (2023 edition, from memory).</summary>
    public const int RoundsToday = 600_000;

    /// <summary>Bytes of salt: NIST SP 800-132, 5.1, asks for 128 bits at least (from memory).</summary>
    public const int SaltBytes = 16;

    private const int HashBytes = 32;

    /// <summary>A PIN made unreadable, with a salt of its own.</summary>
    public static PinHash Of(string pin, int rounds = RoundsToday)
    {
        var salt = RandomNumberGenerator.GetBytes(SaltBytes);
        return new PinHash(rounds, salt, Derive(pin, salt, rounds));
    }

    /// <summary>Whether this is the PIN; takes as long for a near miss as for a far one.</summary>
    public bool Is(string pin) => CryptographicOperations.FixedTimeEquals(Derive(pin, Salt, Rounds), Hash);

    private static byte[] Derive(string pin, byte[] salt, int rounds) =>
        Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes(pin), salt, rounds, HashAlgorithmName.SHA256, HashBytes);
}
