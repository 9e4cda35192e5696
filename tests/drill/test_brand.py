import pytest
from pydantic import ValidationError

from designer.drill.brand import Brand


@pytest.mark.parametrize("colour", ["#12345", "#1234567", "123456", "#12345g", "red", "#123456\n"])
def test_a_colour_is_six_hexadecimal_digits(colour):
    with pytest.raises(ValidationError):
        Brand(name="Alder Quay", colour=colour)


def test_a_brand_needs_no_more_than_a_name():
    assert Brand(name="Alder Quay").colour == "#17202A"


@pytest.mark.parametrize("address", ["two words", "caf\u00e9.example", "x" * 121])
def test_an_address_is_what_a_code_can_hold(address):
    assert Brand(name="Alder Quay", address="HTTPS://EXAMPLE.ORG/D").address == "HTTPS://EXAMPLE.ORG/D"
    with pytest.raises(ValidationError):
        Brand(name="Alder Quay", address=address)
