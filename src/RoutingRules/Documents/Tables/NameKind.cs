using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>The id of something that is not part of a document, such as a rule; formed like ids of documents.</summary>
internal sealed class NameKind(string title) : StringKind<string>
{
    public override string? DefinitionName => "id";

    protected override string Title => title;

    protected override string Pattern => Patterns.Id;

    public override string Load(in Slot slot) => (string)slot.A!;

    public override void Write(Utf8JsonWriter json, string value) => json.WriteStringValue(value);

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        if (!AddressParser.IsId(text))
        {
            return session.Report(
                ReadingRules.ValueMalformed,
                offset,
                $"{Quote.Text(text)} is not {title}, which is 1 to {AddressParser.MaxIdLength} letters, digits, '.', '-' or '_'"
            );
        }

        slot.A = session.Name(text);
        return true;
    }
}
