using System.Buffers.Binary;
using System.Text;

namespace KitWorks.Shop.Printing.Ipp;

/// <summary>The tags of RFC 8010, section 3.5, that we write or look at. Values below 0x10 begin a group of attributes.</summary>
enum IppTag : byte
{
    OperationAttributes = 0x01,
    JobAttributes = 0x02,
    End = 0x03,
    PrinterAttributes = 0x04,
    UnsupportedAttributes = 0x05,
    Integer = 0x21,
    Boolean = 0x22,
    Enum = 0x23,
    Resolution = 0x32,
    TextWithLanguage = 0x35,
    NameWithLanguage = 0x36,
    Text = 0x41,
    Name = 0x42,
    Keyword = 0x44,
    Uri = 0x45,
    Charset = 0x47,
    NaturalLanguage = 0x48,
    MimeMediaType = 0x49,
}

/// <summary>One value, as it stands on the wire.</summary>
sealed record IppValue(IppTag Tag, byte[] Bytes)
{
    public static IppValue Of(IppTag tag, string text) => new(tag, Encoding.UTF8.GetBytes(text));

    public static IppValue Of(IppTag tag, int number)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, number);
        return new(tag, bytes);
    }

    public static IppValue Of(bool value) => new(IppTag.Boolean, [(byte)(value ? 1 : 0)]);

    public string Text => Encoding.UTF8.GetString(
        Tag is IppTag.TextWithLanguage or IppTag.NameWithLanguage && Bytes.Length >= 4
        && 4 + BinaryPrimitives.ReadUInt16BigEndian(Bytes) is var from && from <= Bytes.Length ? Bytes.AsSpan(from) : Bytes);

    /// <summary>An integer or enum, a boolean as 0 or 1, or the cross-feed dots to the inch of a resolution; null for anything else.</summary>
    public int? Number => Tag switch
    {
        IppTag.Integer or IppTag.Enum when Bytes.Length == 4 => BinaryPrimitives.ReadInt32BigEndian(Bytes),
        IppTag.Boolean when Bytes.Length == 1 => Bytes[0],
        // Its last octet is the unit: 3 for dots to the inch, 4 to the centimetre.
        IppTag.Resolution when Bytes.Length == 9 => (int)Math.Round(BinaryPrimitives.ReadInt32BigEndian(Bytes) * (Bytes[8] == 4 ? 2.54 : 1)),
        _ => null,
    };
}

/// <summary>One attribute in a group. Collections are read flat: their members follow as further values, which is enough for one who looks at none.</summary>
sealed record IppAttribute(IppTag Group, string Name, params IReadOnlyList<IppValue> Values)
{
    /// <summary>Which of a message's groups it stands in, from 1, where it was read: each job in a list of jobs is a group of its own.</summary>
    public int GroupNumber { get; init; }

    public static IppAttribute Operation(string name, IppTag tag, params string[] values) =>
        new(IppTag.OperationAttributes, name, [.. values.Select(v => IppValue.Of(tag, v))]);

    public static IppAttribute Job(string name, IppTag tag, params string[] values) =>
        new(IppTag.JobAttributes, name, [.. values.Select(v => IppValue.Of(tag, v))]);
}

/// <summary>A request or an answer of IPP, by the encoding of RFC 8010, section 3. A document follows it, if one does.</summary>
/// <param name="Code">The operation of a request, the status of an answer.</param>
/// <param name="RequestId">The same in the answer as in the request.</param>
/// <param name="Attributes">All attributes, groups one after another.</param>
sealed record IppMessage(ushort Code, int RequestId, IReadOnlyList<IppAttribute> Attributes)
{
    /// <summary>The version we speak; every printer that speaks a later one speaks this too.</summary>
    const ushort Version = 0x0101;

    public byte[] Write()
    {
        var bytes = new MemoryStream();
        Short(Version);
        Short(Code);
        bytes.Write(IppValue.Of(IppTag.Integer, RequestId).Bytes);
        var group = IppTag.End;
        foreach (var attribute in Attributes)
        {
            if (attribute.Group != group) bytes.WriteByte((byte)(group = attribute.Group));
            foreach (var (i, value) in attribute.Values.Index())
            {
                bytes.WriteByte((byte)value.Tag);
                // Further values of an attribute go without its name.
                Octets(i == 0 ? Encoding.ASCII.GetBytes(attribute.Name) : []);
                Octets(value.Bytes);
            }
        }
        bytes.WriteByte((byte)IppTag.End);
        return bytes.ToArray();

        void Short(int value)
        {
            bytes.WriteByte((byte)(value >> 8));
            bytes.WriteByte((byte)value);
        }

        void Octets(byte[] octets)
        {
            Short(octets.Length);
            bytes.Write(octets);
        }
    }

    /// <exception cref="FormatException">These bytes are no IPP message.</exception>
    public static IppMessage Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 9) throw new FormatException("An IPP message has at least nine bytes.");
        var code = BinaryPrimitives.ReadUInt16BigEndian(bytes[2..]);
        var requestId = BinaryPrimitives.ReadInt32BigEndian(bytes[4..]);
        var attributes = new List<(IppTag Group, int Number, string Name, List<IppValue> Values)>();
        var (group, number) = (IppTag.End, 0);
        var rest = bytes[8..];
        while (true)
        {
            if (rest.IsEmpty) throw new FormatException("An IPP message ends with its end tag; this one breaks off.");
            var tag = (IppTag)rest[0];
            rest = rest[1..];
            if (tag == IppTag.End) break;
            if ((byte)tag < 0x10)
            {
                (group, number) = (tag, number + 1);
                continue;
            }
            var name = Encoding.ASCII.GetString(Octets(ref rest));
            var value = new IppValue(tag, Octets(ref rest).ToArray());
            if (name.Length > 0) attributes.Add((group, number, name, [value]));
            else if (attributes.Count > 0) attributes[^1].Values.Add(value);
            else throw new FormatException("The first value of an IPP message has no name.");
        }
        return new(code, requestId, [.. attributes.Select(a => new IppAttribute(a.Group, a.Name, a.Values) { GroupNumber = a.Number })]);
    }

    static ReadOnlySpan<byte> Octets(ref ReadOnlySpan<byte> rest)
    {
        if (rest.Length < 2 || BinaryPrimitives.ReadUInt16BigEndian(rest) is var length && rest.Length < 2 + length)
            throw new FormatException("A value of an IPP message is longer than the message.");
        var octets = rest.Slice(2, length);
        rest = rest[(2 + length)..];
        return octets;
    }

    /// <summary>The values of an attribute as texts, none where it is not there.</summary>
    public IReadOnlyList<string> Texts(string name) => [.. Values(name).Select(v => v.Text)];

    /// <summary>The first value of an attribute as a text.</summary>
    public string? Text(string name) => Values(name).Select(v => v.Text).FirstOrDefault();

    /// <summary>The first value of an attribute as a number.</summary>
    public int? Number(string name) => Values(name).Select(v => v.Number).FirstOrDefault();

    public IReadOnlyList<IppValue> Values(string name) => Attributes.FirstOrDefault(a => a.Name == name)?.Values ?? [];
}
