using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace RoutingRules.Fixing;

/// <summary>Writes a value on one line, with a space after each bracket, colon and comma.</summary>
internal static class OneLineJson
{
    public static string Write(JsonElement value)
    {
        var text = new StringBuilder();
        Write(text, value);
        return text.ToString();
    }

    public static string Name(string name) => $"\"{JsonEncodedText.Encode(name, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\": ";

    private static void Write(StringBuilder text, JsonElement value)
    {
        var isFirst = true;
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var member in value.EnumerateObject())
                {
                    text.Append(isFirst ? "{ " : ", ").Append(Name(member.Name));
                    if (member.NameEquals("extensions"u8))
                    {
                        // What other tools keep is compared by its text.
                        text.Append(member.Value.GetRawText());
                    }
                    else
                    {
                        Write(text, member.Value);
                    }

                    isFirst = false;
                }

                text.Append(isFirst ? "{}" : " }");
                break;
            case JsonValueKind.Array:
                foreach (var element in value.EnumerateArray())
                {
                    text.Append(isFirst ? "[ " : ", ");
                    Write(text, element);
                    isFirst = false;
                }

                text.Append(isFirst ? "[]" : " ]");
                break;
            case JsonValueKind.String:
                text.Append('"').Append(JsonEncodedText.Encode(value.GetString()!, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)).Append('"');
                break;
            default:
                text.Append(value.GetRawText());
                break;
        }
    }
}
