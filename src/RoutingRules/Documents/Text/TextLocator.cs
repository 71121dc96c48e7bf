using System.Globalization;
using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Text;

/// <summary>Finds where in a document's text the values are that JSON Pointers (RFC 6901) name.</summary>
public static class TextLocator
{
    private static readonly JsonReaderOptions Options = new() { MaxDepth = 512 };

    /// <summary>The place of a value, or of its nearest ancestor that is there.</summary>
    /// <param name="utf8Json">The text, with or without a byte order mark.</param>
    /// <param name="pointer">The pointer; empty for the whole document.</param>
    /// <returns>Null when the text is no JSON as far as the value.</returns>
    public static TextPosition? Find(ReadOnlySpan<byte> utf8Json, string pointer)
    {
        ArgumentNullException.ThrowIfNull(pointer);
        var root = new Node();
        var node = root.Add(pointer);
        Walk(utf8Json, root);
        return node.Position;
    }

    /// <summary>The findings with line and column; those that have them, and those beyond a fault of the text, stay as they are.</summary>
    /// <remarks>One pass over the text, however many findings there are.</remarks>
    /// <param name="findings">In any order, which is kept.</param>
    /// <param name="utf8Json">The text that the pointers speak of.</param>
    public static ValueList<Finding> Locate(this ValueList<Finding> findings, ReadOnlySpan<byte> utf8Json)
    {
        var root = new Node();
        var nodes = new Node?[findings.Count];
        var wanted = false;
        for (var i = 0; i < nodes.Length; i++)
        {
            nodes[i] = findings[i].Line is null ? root.Add(findings[i].Pointer) : null;
            wanted |= nodes[i] is not null;
        }

        if (!wanted)
        {
            return findings;
        }

        Walk(utf8Json, root);
        var located = new Finding[nodes.Length];
        for (var i = 0; i < located.Length; i++)
        {
            located[i] = nodes[i]?.Position is { } at ? findings[i] with { Line = at.Line, Column = at.Column } : findings[i];
        }

        return ValueList.Adopt(located);
    }

    private static void Walk(ReadOnlySpan<byte> utf8Json, Node root)
    {
        var text = Utf8Mark.Skip(utf8Json);
        var lines = new LineCounter(text);
        try
        {
            var json = new Utf8JsonReader(text, Options);
            json.Read();
            Visit(ref json, ref lines, root);
        }
        catch (JsonException)
        {
            // What was found before the fault stands.
        }
    }

    private static void Visit(ref Utf8JsonReader json, ref LineCounter lines, Node node)
    {
        node.Place(lines.At(json.TokenStartIndex));
        if (node.IsLeaf)
        {
            json.Skip();
        }
        else if (json.TokenType == JsonTokenType.StartObject)
        {
            while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                var child = Escapes.HasLoneSurrogate(json.ValueSpan) ? null : node.Unplaced(json.GetString()!);
                json.Read();
                Enter(ref json, ref lines, child);
            }
        }
        else if (json.TokenType == JsonTokenType.StartArray)
        {
            for (var i = 0; json.Read() && json.TokenType != JsonTokenType.EndArray; i++)
            {
                Enter(ref json, ref lines, node.Unplaced(i.ToString(CultureInfo.InvariantCulture)));
            }
        }
    }

    private static void Enter(ref Utf8JsonReader json, ref LineCounter lines, Node? child)
    {
        if (child is null)
        {
            json.Skip();
        }
        else
        {
            Visit(ref json, ref lines, child);
        }
    }

    private sealed class Node
    {
        private readonly Dictionary<string, Node> children = new(StringComparer.Ordinal);
        private readonly Node? parent;
        private TextPosition? own;

        public Node(Node? parent = null) => this.parent = parent;

        public TextPosition? Position => own ?? parent?.Position;

        public bool IsLeaf => children.Count == 0;

        public void Place(TextPosition at) => own = at;

        /// <summary>The child of a name unless it has been found before: of two members of one name the first counts.</summary>
        public Node? Unplaced(string name) => children.TryGetValue(name, out var child) && child.own is null ? child : null;

        public Node Add(string pointer)
        {
            var node = this;
            foreach (var part in pointer.Split('/').Skip(1))
            {
                var name = JsonPointer.Unescape(part);
                if (!node.children.TryGetValue(name, out var child))
                {
                    child = new Node(node);
                    node.children.Add(name, child);
                }

                node = child;
            }

            return node;
        }
    }
}
