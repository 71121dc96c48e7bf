using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace RoutingRules.Planning.Comparing;

/// <summary>How values of members are compared and shown: on one line, without spaces; what other tools keep under <c>extensions</c> as its text.</summary>
internal static class OneLine
{
    /// <summary>
    /// The member that holds what only other tools read: a member written twice, half of a surrogate pair or deep nesting in there is theirs.
    /// </summary>
    private const string Extensions = "extensions";

    /// <summary>A member's value.</summary>
    public static string Write(string member, JsonElement value)
    {
        var text = new StringBuilder();
        Member(text, member, value);
        return text.ToString();
    }

    private static void Member(StringBuilder text, string name, JsonElement value)
    {
        if (name == Extensions)
        {
            Squeeze(text, value.GetRawText());
        }
        else
        {
            Write(text, value);
        }
    }

    private static void Write(StringBuilder text, JsonElement value)
    {
        var between = "";
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                text.Append('{');
                foreach (var member in value.EnumerateObject())
                {
                    text.Append(between);
                    Text(text, member.Name);
                    text.Append(':');
                    Member(text, member.Name, member.Value);
                    between = ",";
                }

                text.Append('}');
                break;
            case JsonValueKind.Array:
                text.Append('[');
                foreach (var element in value.EnumerateArray())
                {
                    text.Append(between);
                    Write(text, element);
                    between = ",";
                }

                text.Append(']');
                break;
            case JsonValueKind.String:
                Text(text, value.GetString()!);
                break;
            default:
                text.Append(value.GetRawText());
                break;
        }
    }

    private static void Text(StringBuilder text, string value) =>
        text.Append('"').Append(JsonEncodedText.Encode(value, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)).Append('"');

    /// <summary>JSON text without the white space between its tokens.</summary>
    private static void Squeeze(StringBuilder text, string json)
    {
        var isText = false;
        for (var i = 0; i < json.Length; i++)
        {
            if (isText && json[i] == '\\')
            {
                text.Append(json[i++]);
            }
            else if (json[i] == '"')
            {
                isText = !isText;
            }
            else if (!isText && json[i] is ' ' or '\t' or '\r' or '\n')
            {
                continue;
            }

            text.Append(json[i]);
        }
    }
}
