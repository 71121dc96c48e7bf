namespace RoutingRules.Documents.Text;

/// <summary>A place in a text.</summary>
public readonly record struct TextPosition
{
    /// <summary>A place.</summary>
    /// <param name="line">Line, from 1.</param>
    /// <param name="column">Column in UTF-16 units, from 1.</param>
    public TextPosition(int line, int column)
    {
        Line = line;
        Column = column;
    }

    /// <summary>Line, from 1; lines end with LF, CR LF or CR.</summary>
    public int Line { get; }

    /// <summary>Column in UTF-16 units, from 1; a byte order mark takes no column.</summary>
    public int Column { get; }

    /// <summary>Where in a text a place is that is told from the beginning of a document, when the document begins here.</summary>
    internal TextPosition Of(TextPosition inside) => new(Line + inside.Line - 1, inside.Line == 1 ? Column + inside.Column - 1 : inside.Column);

    /// <summary>For example <c>12:5</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Line}:{Column}");
}
