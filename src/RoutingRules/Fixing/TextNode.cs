using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Fixing;

/// <summary>A value of a JSON text with the bytes it takes up.</summary>
internal sealed class TextNode
{
    private static readonly JsonReaderOptions Options = new() { MaxDepth = 512 };

    private TextNode(int start) => Start = start;

    public int Start { get; }

    /// <summary>The byte after the value.</summary>
    public int End { get; private set; }

    /// <summary>Members of an object or elements of a list, in order; null for other values.</summary>
    public List<Element>? Children { get; private set; }

    public bool IsList { get; private set; }

    /// <summary>Reads a whole text without a byte order mark.</summary>
    /// <exception cref="JsonException">The text is not sound JSON.</exception>
    public static TextNode Read(ReadOnlySpan<byte> text)
    {
        var json = new Utf8JsonReader(text, Options);
        json.Read();
        return Read(ref json);
    }

    /// <summary>The value at a pointer, or null.</summary>
    public TextNode? Find(string pointer)
    {
        var node = this;
        foreach (var part in JsonPatchTarget.TryParts(pointer, out var parts) ? parts : [])
        {
            node = node?.Child(part) is { } index and >= 0 ? node.Children![index].Value : null;
        }

        return node;
    }

    /// <summary>The position of a member or an element, or -1.</summary>
    public int Child(string part) =>
        Children is null ? -1
        : !IsList ? Children.FindIndex(child => child.Name == part)
        : int.TryParse(part, out var index) && index < Children.Count ? index
        : -1;

    private static TextNode Read(ref Utf8JsonReader json)
    {
        var node = new TextNode((int)json.TokenStartIndex);
        if (json.TokenType == JsonTokenType.StartObject)
        {
            node.Children = [];
            while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                var start = (int)json.TokenStartIndex;
                var name = Escapes.HasLoneSurrogate(json.ValueSpan) ? null : json.GetString();
                json.Read();
                node.Children.Add(new Element(start, name, Read(ref json)));
            }
        }
        else if (json.TokenType == JsonTokenType.StartArray)
        {
            node.Children = [];
            node.IsList = true;
            while (json.Read() && json.TokenType != JsonTokenType.EndArray)
            {
                node.Children.Add(new Element((int)json.TokenStartIndex, null, Read(ref json)));
            }
        }

        node.End = (int)json.BytesConsumed;
        return node;
    }

    /// <summary>A member, from its name on, or an element.</summary>
    internal sealed record Element(int Start, string? Name, TextNode Value);
}
