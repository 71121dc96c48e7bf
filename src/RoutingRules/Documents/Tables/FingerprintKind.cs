using System.Buffers;
using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>The identity of a finding: 16 hexadecimal digits, small letters.</summary>
internal sealed class FingerprintKind : StringKind<string>
{
    private const int Length = 16;

    private static readonly SearchValues<byte> Digits = SearchValues.Create("0123456789abcdef"u8);

    public override string? DefinitionName => "fingerprint";

    protected override string Title => "a fingerprint";

    protected override string Pattern => Patterns.Fingerprint;

    public override string Load(in Slot slot) => (string)slot.A!;

    public override void Write(Utf8JsonWriter json, string value) => json.WriteStringValue(value);

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        if (text.Length != Length || text.IndexOfAnyExcept(Digits) >= 0)
        {
            return session.Report(
                ReadingRules.ValueMalformed,
                offset,
                $"{Quote.Text(text)} is no fingerprint, which is 16 of the digits 0 to 9 and a to f; copy it from a report"
            );
        }

        slot.A = Encoding.UTF8.GetString(text);
        return true;
    }
}
