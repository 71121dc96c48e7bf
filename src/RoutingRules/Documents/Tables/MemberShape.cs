using System.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A member of an object: its name, what its value looks like, and what it means.</summary>
internal class MemberShape(string name, ValueShape value, bool required, string doc)
{
    public string Name { get; } = name;

    public byte[] NameUtf8 { get; } = Encoding.UTF8.GetBytes(name);

    public ValueShape Value { get; } = value;

    public bool Required { get; } = required;

    public string Doc { get; } = doc;
}
