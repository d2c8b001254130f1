"""x"""

import click

figure = click.Group("figure")
