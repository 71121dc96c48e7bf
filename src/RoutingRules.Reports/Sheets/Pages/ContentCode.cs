using System.Buffers.Binary;
using System.Security.Cryptography;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A short code of a document that two people can read to each other.</summary>
internal static class ContentCode
{
    // Without 0 O, 1 I L, 2 Z, 5 S, 8 B and V, which looks like U.
    private const string Symbols = "34679ACDEFGHJKMNPQRTUWXY";
    private const int Length = 6;

    /// <summary>
    /// Six symbols: the first eight octets of the SHA-256 of the written show, as a number, most significant first, in base 24 with the lowest digit last.
    /// </summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the show is not a JSON object.</exception>
    public static string Of(Show show)
    {
        var number = BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(ShowWriter.Text(show)));
        var code = new char[Length];
        for (var i = Length - 1; i >= 0; i--)
        {
            code[i] = Symbols[(int)(number % (ulong)Symbols.Length)];
            number /= (ulong)Symbols.Length;
        }

        return new string(code);
    }
}
