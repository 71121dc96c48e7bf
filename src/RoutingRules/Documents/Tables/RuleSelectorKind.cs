using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>A rule's id or name, or the beginning of ids with a star: <c>RR7*</c>.</summary>
internal sealed class RuleSelectorKind : StringKind<string>
{
    public override string? DefinitionName => "ruleSelector";

    protected override string Title => "a rule's id or name";

    protected override string Pattern => Patterns.RuleSelector;

    public override string Load(in Slot slot) => (string)slot.A!;

    public override void Write(Utf8JsonWriter json, string value) => json.WriteStringValue(value);

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        var name = text.EndsWith("*"u8) ? text[..^1] : text;
        if (!AddressParser.IsId(name))
        {
            return session.Report(
                ReadingRules.ValueMalformed,
                offset,
                $"{Quote.Text(text)} is not a rule's id or name, nor the beginning of ids with a star such as RR7*; it is 1 to "
                    + $"{AddressParser.MaxIdLength} letters, digits, '.', '-' or '_'"
            );
        }

        slot.A = session.Name(text);
        return true;
    }
}
